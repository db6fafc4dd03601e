/**
 * Shaders of the surface. One set of uniforms serves both programs: the body and the ribbons upon it (slices, ridges,
 * cursor). Vertices are cells of the data texture, placed by position: a change of range, scale, limits or camera changes
 * uniforms only. Long because the placing of a vertex is written once for all of
 * them.
 */

/** Reading the field and placing a vertex; the same arithmetic as relief.ts. */
const placing = /* glsl */ `
precision highp float;
precision highp sampler2D;

/** Value, and its height above what the window alone would leave. */
uniform sampler2D uValues;
/** Position, noise floor and logarithm of the position per column; position and lowest meaningful column per row. */
uniform sampler2D uColumns;
uniform sampler2D uRows;
uniform mat4 uMatrix;
uniform vec3 uHalf;
uniform vec4 uWindow;
/** From position, or its logarithm, to the box: factor and offset. */
uniform vec2 uColumnPlace;
uniform vec2 uRowPlace;
uniform vec2 uValueRange;
uniform bool uLog;
uniform float uRowEnd;
uniform vec2 uStride;
uniform vec2 uPixels;

/** Between two cells of a list; at a whole index one reading. */
vec4 along(sampler2D list, float k) {
  float k0 = floor(k);
  vec4 here = texelFetch(list, ivec2(int(k0), 0), 0);
  return k == k0 ? here : mix(here, texelFetch(list, ivec2(int(k0) + 1, 0), 0), k - k0);
}

vec2 cellAt(float c, float r) {
  ivec2 at = ivec2(int(c), int(r));
  float cf = c - floor(c);
  float rf = r - floor(r);
  vec2 near = texelFetch(uValues, at, 0).rg;
  if (cf == 0.0 && rf == 0.0) return near;
  ivec2 step = ivec2(cf > 0.0 ? 1 : 0, rf > 0.0 ? 1 : 0);
  near = mix(near, texelFetch(uValues, at + ivec2(step.x, 0), 0).rg, cf);
  vec2 far = mix(texelFetch(uValues, at + ivec2(0, step.y), 0).rg, texelFetch(uValues, at + step, 0).rg, cf);
  return mix(near, far, rf);
}

float columnPlace(vec4 column) {
  return (uLog ? column.z : column.x) * uColumnPlace.x + uColumnPlace.y;
}

float rowPlace(float position) {
  return position * uRowPlace.x + uRowPlace.y;
}

float heightOf(float value) {
  float part = clamp((value - uValueRange.x) / (uValueRange.y - uValueRange.x), 0.0, 1.0);
  return (2.0 * part - 1.0) * uHalf.y;
}

/** A vertex in the box; info: value, value above the floor, lowest meaningful column minus the column, row position. */
vec3 place(float c, float r, out vec4 info, out float fast) {
  vec4 column = along(uColumns, c);
  vec4 row = along(uRows, r);
  vec2 cell = cellAt(c, r);
  info = vec4(cell.x, cell.x - column.y, row.y - column.x, row.x);
  fast = cell.y;
  float shown = row.x > uRowEnd ? uValueRange.x : max(cell.x, column.y);
  return vec3(columnPlace(column), heightOf(shown), rowPlace(row.x));
}
`;

export const bodyVertex = /* glsl */ `
${placing}
/** Indices of the vertex in the grid; -1 and beyond the last are the lower edges of the cut walls. */
in vec2 cell;
uniform vec2 uCells;
out vec4 vInfo;
out vec3 vAt;
out float vWall;
out float vPast;
out float vFast;

void main() {
  vec2 inner = clamp(cell, vec2(0.0), uCells);
  float c = clamp(floor(uWindow.x) + inner.x * uStride.x, uWindow.x, uWindow.y);
  float r = clamp(floor(uWindow.z) + inner.y * uStride.y, uWindow.z, uWindow.w);
  vec3 at = place(c, r, vInfo, vFast);
  vPast = vInfo.w - uRowEnd;
  vWall = inner == cell ? 0.0 : 1.0;
  if (vWall > 0.0) at.y = -uHalf.y;
  vAt = at;
  gl_Position = uMatrix * vec4(at, 1.0);
}
`;

export const bodyFragment = /* glsl */ `
precision highp float;
precision highp sampler2D;
uniform sampler2D uColours;
uniform vec2 uValueRange;
uniform vec3 uBackground;
uniform vec3 uText;
uniform vec3 uNoise;
uniform vec3 uHatch;
uniform float uIso;
uniform float uRatio;
uniform bool uDark;
in vec4 vInfo;
in vec3 vAt;
in float vWall;
in float vPast;
in float vFast;
out vec4 outColour;

float stroke(float across, float pitch) {
  float place = mod(across / uRatio, pitch);
  float away = min(place, pitch - place) * 0.7071 * uRatio;
  return clamp(0.5 * uRatio + 0.5 - away, 0.0, 1.0);
}

void main() {
  float part = clamp((vInfo.x - uValueRange.x) / (uValueRange.y - uValueRange.x), 0.0, 1.0);
  vec3 colour = texture(uColours, vec2((part * 255.0 + 0.5) / 256.0, 0.5)).rgb;
  // Cells are few pixels wide: the facets of a flat normal are not seen.
  vec3 normal = normalize(cross(dFdx(vAt), dFdy(vAt)) + vec3(0.0, 1e-12, 0.0));
  normal *= sign(normal.y + 1e-6);
  // Light from the upper left: enough to read the form, too little to change the level a colour stands for.
  float light = 0.93 + 0.1 * dot(normal, normalize(vec3(-0.55, 0.75, 0.35)));
  colour *= min(light, 1.03);
  if (uIso > 0.0) {
    float level = vInfo.x / uIso;
    float width = fwidth(level);
    float away = abs(fract(level + 0.5) - 0.5) / max(width, 1e-5);
    // Crisp where the surface is steep enough to have a line at all; none along the bottom of what is shown.
    float ink = (1.0 - smoothstep(0.4 * uRatio, 0.4 * uRatio + 0.8, away)) * (1.0 - smoothstep(0.12, 0.3, width)) * step(1e-5, width);
    ink *= clamp(vInfo.y / 3.0, 0.0, 1.0) * smoothstep(0.4, 1.2, vInfo.x - uValueRange.x);
    colour = mix(colour, part > 0.62 ? uBackground : uText, 0.34 * ink);
  }
  // No slower than the window itself: paler and hatched, as what says nothing of the room.
  if (vFast <= 0.0) colour = mix(colour, uBackground, 0.16 + 0.4 * stroke(gl_FragCoord.x + gl_FragCoord.y, 4.0));
  if (vInfo.y <= 0.0) colour = uNoise * (0.97 + 0.03 * normal.y);
  if (vInfo.z > 0.0) colour = mix(mix(colour, uBackground, 0.75), uHatch, stroke(gl_FragCoord.x - gl_FragCoord.y, 5.0));
  if (vPast > 0.0) colour = mix(uBackground, uHatch, stroke(gl_FragCoord.x + gl_FragCoord.y, 7.0));
  if (vWall > 1e-4) {
    vec3 wall = mix(uBackground, uText, uDark ? 0.085 : 0.06);
    colour = vPast > 0.0 ? wall : mix(wall, vInfo.y <= 0.0 ? uNoise : colour, 0.3 * pow(1.0 - vWall, 1.5));
  }
  outColour = vec4(colour, 1.0);
}
`;

/** A point of the limit's curtain: `up` from 0 at the floor to 1 at its upper edge. */
const curtainPlace = /* glsl */ `
/** Per column: row positions of the limit and of the further one, far below zero where there is none; their indices. */
uniform sampler2D uLimit;
uniform float uCurtain;

vec3 curtainAt(float c, float up, bool further, out float valid) {
  vec4 column = along(uColumns, c);
  vec4 limits = along(uLimit, c);
  float z = rowPlace(further ? limits.y : limits.x);
  valid = abs(z) <= uHalf.z ? 1.0 : 0.0;
  // The hem lies upon the surface: on the floor where that has sunk, over the ridge where it still stands.
  float ground = max(column.y, uValueRange.x);
  if (up == 0.0 && valid > 0.0) ground = max(ground, cellAt(c, further ? limits.w : limits.z).x);
  return vec3(columnPlace(column), heightOf(ground) + up * uCurtain * 2.0 * uHalf.y, clamp(z, -uHalf.z, uHalf.z));
}
`;

export const curtainVertex = /* glsl */ `
${placing}
${curtainPlace}
in vec2 cell;
out float vUp;
out float vValid;

void main() {
  float c = clamp(floor(uWindow.x) + cell.x * uStride.x, uWindow.x, uWindow.y);
  // Never quite zero: the sheet itself stands on the floor, inside of a ridge that exceeds the limit.
  vUp = max(1e-4, 0.5 + 0.5 * cell.y);
  gl_Position = uMatrix * vec4(curtainAt(c, vUp, false, vValid), 1.0);
}
`;

export const curtainFragment = /* glsl */ `
precision highp float;
uniform vec3 uText;
uniform bool uDark;
in float vUp;
in float vValid;
out vec4 outColour;

void main() {
  if (vValid < 0.999) discard;
  float alpha = mix(uDark ? 0.26 : 0.2, 0.06, vUp);
  outColour = vec4(uText * alpha, alpha);
}
`;

/** A ribbon of constant width on the screen, along columns at one row or along rows at one column. */
export const ribbonVertex = /* glsl */ `
${placing}
/** Step along the ribbon and side, -1 or 1. */
in vec2 cell;
/** Where it stands on the other axis; first and last index on its own; width in device pixels. */
in vec4 line;
/** Colour and opacity; a negative opacity takes the colour of the value. */
in vec4 ink;
uniform bool uAcross;
uniform float uLift;
out vec4 vInk;
out float vPart;
out float vSide;
out float vWidth;
out float vAbove;
out float vPast;
out float vValid;

#ifdef CURTAIN
${curtainPlace}
vec4 project(float own, out vec4 info) {
  bool further = line.x >= 2.0;
  info = vec4(0.0, 1.0, 0.0, uRowEnd);
  float valid;
  vec3 at = curtainAt(own, line.x - (further ? 2.0 : 0.0), further, valid);
  info.z = valid;
  return uMatrix * vec4(at, 1.0);
}
#else
vec4 project(float own, out vec4 info) {
  float none;
  vec3 at = uAcross ? place(line.x, own, info, none) : place(own, line.x, info, none);
  info.z = 1.0;
  return uMatrix * vec4(at, 1.0);
}
#endif

void main() {
  float stride = uAcross ? uStride.y : uStride.x;
  float own = clamp(floor(line.y) + cell.x * stride, line.y, line.z);
  vec4 info;
  vec4 points[3];
  // Its neighbours give the direction; the vertex itself comes last, so that its own info is kept.
  for (int k = 0; k < 3; k += 1)
    points[k] = project(clamp(own + (k == 0 ? -stride : k == 1 ? stride : 0.0), line.y, line.z), info);
  vec4 here = points[2];
  vec2 a = points[0].xy / points[0].w * uPixels;
  vec2 h = here.xy / here.w * uPixels;
  vec2 b = points[1].xy / points[1].w * uPixels;
  vec2 d1 = h - a;
  vec2 d2 = b - h;
  vec2 n1 = length(d1) > 1e-4 ? normalize(d1) : vec2(0.0);
  vec2 n2 = length(d2) > 1e-4 ? normalize(d2) : n1;
  if (n1 == vec2(0.0)) n1 = n2;
  vec2 direction = n1 + n2;
  direction = length(direction) > 0.3 ? normalize(direction) : n2;
  vec2 normal = vec2(-direction.y, direction.x);
  float miter = min(1.6, 1.0 / max(0.5, dot(normal, vec2(-n2.y, n2.x))));
  float reach = (line.w * 0.5 + 1.0) * miter;
  here.xy += normal * cell.y * reach / uPixels * here.w;
  here.z -= uLift * here.w;
  gl_Position = here;
  vInk = ink;
  vSide = cell.y * (line.w * 0.5 + 1.0);
  vWidth = line.w;
  vPart = clamp((info.x - uValueRange.x) / (uValueRange.y - uValueRange.x), 0.0, 1.0);
  vAbove = info.y;
  vPast = info.w - uRowEnd;
  vValid = info.z;
}
`;

export const ribbonFragment = /* glsl */ `
precision highp float;
precision highp sampler2D;
uniform sampler2D uColours;
uniform vec3 uBackground;
uniform vec3 uText;
uniform vec3 uNoise;
uniform bool uDark;
in vec4 vInk;
in float vPart;
in float vSide;
in float vWidth;
in float vAbove;
in float vPast;
in float vValid;
out vec4 outColour;

void main() {
  if (vValid < 0.999) discard;
  float edge = clamp(vWidth * 0.5 + 0.5 - abs(vSide), 0.0, 1.0) * min(1.0, vWidth);
  vec3 colour = vInk.rgb;
  float alpha = vInk.a;
  if (vInk.a < 0.0) {
    vec3 own = texture(uColours, vec2((vPart * 255.0 + 0.5) / 256.0, 0.5)).rgb;
    // Lines part from the surface towards the ink of the page where it is pale, towards the paper where it is strong.
    vec3 towards = uDark ? mix(uText, uBackground, smoothstep(0.35, 0.75, vPart))
                         : mix(uText, uBackground, smoothstep(0.45, 0.8, vPart));
    colour = vAbove <= 0.0 ? mix(uNoise, uText, 0.25) : mix(own, towards, 0.45);
    // Quiet upon the floor, where nothing stands.
    alpha = vPast > 0.0 ? 0.0 : -vInk.a * (vAbove <= 0.0 ? 0.4 : mix(0.35, 1.0, smoothstep(0.0, 0.06, vPart)));
  }
  alpha *= edge;
  if (alpha < 0.01) discard;
  outColour = vec4(colour * alpha, alpha);
}
`;
