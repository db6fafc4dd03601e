/**
 * three for the single file without what no picture of ours asks of it. Its renderer holds the shaders of every material,
 * lights, shadows, environments and headsets; ours draws shaders of its own into one canvas. Their modules are emptied, as
 * far as the renderer never calls them for a material of ours; pages that are built take three as it is.
 */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { root } from './project.mjs';

const source = `${root}node_modules/three/src/`;

/**
 * Something of a name that is made with `new` and whose methods do nothing.
 *
 * @param {string} name
 * @param {string} members of the object
 */
const idle = (name, members) =>
  `export function ${name}() { const none = () => undefined; const no = () => false; return { ${members} }; }`;

/** In the place of modules, by their path in three's sources. @type {Record<string, string>} */
const emptied = {
  'renderers/webxr/WebXRManager.js': idle(
    'WebXRManager',
    `enabled: false, isPresenting: false, cameraAutoUpdate: false, hasDepthSensing: no, addEventListener: none,
    removeEventListener: none, setAnimationLoop: none, getEnvironmentBlendMode: none, dispose: none`,
  ),
  'renderers/webgl/WebGLShadowMap.js': idle(
    'WebGLShadowMap',
    'enabled: false, autoUpdate: false, needsUpdate: false, type: 1, render: none',
  ),
  // Only for canvases of more than eight bits.
  'renderers/webgl/WebGLOutput.js': idle('WebGLOutput', ''),
  'renderers/webgl/WebGLEnvironments.js': idle(
    'WebGLEnvironments',
    'get: (texture) => texture, dispose: none',
  ),
  'renderers/webgl/WebGLMorphtargets.js': idle('WebGLMorphtargets', 'update: none'),
  'renderers/webgl/WebGLUniformsGroups.js': idle(
    'WebGLUniformsGroups',
    'bind: none, update: none, dispose: none',
  ),
  'renderers/webgl/WebGLMaterials.js': idle(
    'WebGLMaterials',
    `refreshFogUniforms: none,
    refreshMaterialUniforms: (uniforms, material) => { material.uniformsNeedUpdate = false; }`,
  ),
  'renderers/webgl/WebGLLights.js': idle(
    'WebGLLights',
    `setup: none, setupView: none, state: {
      version: 0, numSpotLightShadowsWithMaps: 0, numLightProbes: 0,
      sun: [], directional: [], spot: [], spotLightMap: [], rectArea: [], point: [], hemi: [],
      sunShadowMap: [], directionalShadowMap: [], spotShadowMap: [], pointShadowMap: [] }`,
  ),
  // No picture of ours has a sky: what is behind it is cleared.
  'renderers/webgl/WebGLBackground.js': `
    import { Color } from '../../math/Color.js';
    export function WebGLBackground(renderer, environments, state, objects, alpha, premultipliedAlpha) {
      const clear = new Color(0x000000);
      let opacity = alpha === true ? 0 : 1;
      const set = () => {
        state.buffers.color.setClear(clear.r, clear.g, clear.b, opacity, premultipliedAlpha);
      };
      return {
        getClearColor: () => clear,
        getClearAlpha: () => opacity,
        setClearColor: (color, alpha = 1) => { clear.set(color); opacity = alpha; set(); },
        setClearAlpha: (alpha) => { opacity = alpha; set(); },
        render: () => {
          set();
          if (!renderer.autoClear) return;
          state.buffers.depth.setTest(true);
          state.buffers.depth.setMask(true);
          state.buffers.color.setMask(true);
          renderer.clear(renderer.autoClearColor, renderer.autoClearDepth, renderer.autoClearStencil);
        },
        addToRenderList: () => undefined,
        dispose: () => undefined,
      };
    }`,
  'renderers/webgl/WebGLClipping.js': idle(
    'WebGLClipping',
    `uniform: { value: null, needsUpdate: false }, numPlanes: 0, numIntersection: 0, init: no, setState: none,
    setGlobalState: none, beginShadows: none, endShadows: none`,
  ),
  // A pointer finds what it is over in the height field and never in triangles.
  'math/Ray.js': 'export class Ray {}',
  'math/Triangle.js': 'export class Triangle {}',
  'math/FrustumArray.js': 'export class FrustumArray {}',
  'renderers/shaders/DFGLUTData.js': 'export const getDFGLUT = () => null;',
  'renderers/shaders/ShaderLib.js': 'export const ShaderLib = {};',
  'renderers/shaders/ShaderChunk.js': 'export const ShaderChunk = {};',
};

/** Methods of classes that no picture asks for: of scenes as JSON, of what a pointer hits, of normals. */
const unasked =
  /\n\t(?:static )?(?:toJSON|fromJSON|raycast|_computeIntersections|computeTangents|computeVertexNormals|normalizeNormals|toNonIndexed)\([^\n]*\) \{\n[\s\S]*?\n\t\}\n/g;

/**
 * Functions inside the renderer that no picture asks for: textures of cubes and films, targets that are read back or copied,
 * what is seen through glass. Those of `this` are gone with their assignment, the others stay and do nothing.
 *
 * @type {Record<string, { own: string[], inner: string[] }>}
 */
const unaskedInside = {
  'renderers/WebGLRenderer.js': {
    own: [
      ...[
        'compileAsync',
        'readRenderTargetPixels',
        'readRenderTargetPixelsAsync',
        'copyFramebufferToTexture',
      ],
      ...['copyTextureToTexture', 'initRenderTarget', 'initTexture', 'setRenderTargetTextures'],
      ...['setRenderTargetFramebuffer', 'setEffects', 'setAnimationLoop', 'resetState'],
    ],
    inner: ['renderTransmissionPass', 'getReadableState', 'onXRSessionStart', 'onXRSessionEnd'],
  },
  'renderers/webgl/WebGLTextures.js': {
    own: [],
    inner: ['uploadCubeTexture', 'setTextureCube', 'setTexture2DArray', 'setTexture3D', 'updateVideoTexture'],
  },
};

/** @param {string} text of a module of three @param {string} file @param {{ own: string[], inner: string[] }} names */
function withoutUnasked(text, file, { own, inner }) {
  /** @param {string} name @param {RegExp} form @param {string} left */
  const cut = (name, form, left) => {
    if (!form.test(text))
      throw new Error(`three has no ${name} in ${file}: look at scripts/lib/lean-three.mjs.`);
    text = text.replace(form, left);
  };
  for (const name of own)
    cut(name, new RegExp(`\n(\t+)this\\.${name} = (?:async )?function [\\s\\S]*?\n\\1\\};\n`), '\n');
  for (const name of inner)
    cut(name, new RegExp(`\n(\t+)function ${name}\\([\\s\\S]*?\n\\1\\}\n`), `\nfunction ${name}() {}\n`);
  return text;
}

/** @param {string} path */
async function leanText(path) {
  const file = path.replaceAll('\\', '/').slice(source.length);
  if (emptied[file] !== undefined) return emptied[file];
  const text = (await readFile(path, 'utf8')).replace(unasked, '\n');
  const names = unaskedInside[file];
  return names ? withoutUnasked(text, file, names) : text;
}

/** @returns {import('esbuild').Plugin} */
export function leanThree() {
  for (const file of ['Three.js', ...Object.keys(emptied)])
    if (!existsSync(source + file))
      throw new Error(`three has no ${file} any more: look at scripts/lib/lean-three.mjs.`);
  return {
    name: 'lean-three',
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /^three$/ }, () => ({ path: `${source}Three.js`, sideEffects: false }));
      onLoad({ filter: /[\\/]three[\\/]src[\\/].*\.js$/ }, async ({ path }) => ({
        contents: await leanText(path),
        loader: 'js',
      }));
    },
  };
}
