/** Smooth edges where they are wanted: a target of four samples per pixel, copied onto the canvas. */
import {
  GLSL3,
  Mesh,
  NoBlending,
  NearestFilter,
  PlaneGeometry,
  RawShaderMaterial,
  Scene,
  WebGLRenderTarget,
  type Camera,
  type Vector4,
  type WebGLRenderer,
} from 'three';

const copyVertex = /* glsl */ `
in vec3 position;
void main() {
  gl_Position = vec4(position.xy * 2.0, 0.0, 1.0);
}
`;

/** Both have the same origin, so that a pixel is copied to its own place. */
const copyFragment = /* glsl */ `
precision highp float;
precision highp sampler2D;
uniform sampler2D uFrom;
uniform vec2 uShift;
out vec4 outColour;
void main() {
  outColour = texelFetch(uFrom, ivec2(gl_FragCoord.xy - uShift), 0);
}
`;

export class SmoothTarget {
  private readonly gl: WebGLRenderer;
  private target: WebGLRenderTarget | null = null;
  private readonly scene = new Scene();
  private readonly copy: Mesh<PlaneGeometry, RawShaderMaterial>;

  constructor(gl: WebGLRenderer) {
    this.gl = gl;
    this.copy = new Mesh(
      new PlaneGeometry(1, 1),
      new RawShaderMaterial({
        glslVersion: GLSL3,
        vertexShader: copyVertex,
        fragmentShader: copyFragment,
        uniforms: { uFrom: { value: null }, uShift: { value: [0, 0] } },
        blending: NoBlending,
        depthTest: false,
        depthWrite: false,
      }),
    );
    this.copy.frustumCulled = false;
    this.scene.add(this.copy);
  }

  /** Renders with smooth edges into `frame` of the canvas, which viewport and scissor must name already. */
  render(scene: Scene, camera: Camera, frame: Vector4): void {
    const { gl } = this;
    const [width, height] = [frame.z, frame.w];
    if (!this.target || this.target.width < width || this.target.height < height) {
      const [wide, high] = [this.target?.width ?? 0, this.target?.height ?? 0];
      this.target?.dispose();
      this.target = new WebGLRenderTarget(Math.max(width, wide), Math.max(height, high), {
        samples: 4,
        minFilter: NearestFilter,
        magFilter: NearestFilter,
      });
    }
    const { target } = this;
    target.viewport.set(0, 0, width, height);
    target.scissor.set(0, 0, width, height);
    target.scissorTest = true;
    gl.setRenderTarget(target);
    gl.render(scene, camera);
    gl.setRenderTarget(null);
    const { uniforms } = this.copy.material;
    uniforms.uFrom.value = target.texture;
    uniforms.uShift.value = [frame.x, frame.y];
    gl.render(this.scene, camera);
  }

  /** Gives the target's memory back. */
  shrink(): void {
    this.target?.dispose();
    this.target = null;
  }

  dispose(): void {
    this.shrink();
    this.copy.geometry.dispose();
    this.copy.material.dispose();
  }
}
