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

/** Between two cells of a list. */
vec4 along(sampler2D list, float k) {
  int k0 = int(k);
  return mix(texelFetch(list, ivec2(k0, 0), 0), texelFetch(list, ivec2(k0 + 1, 0), 0), fract(k));
}

vec2 cellAt(float c, float r) {
  ivec2 at = ivec2(int(c), int(r));
  vec2 part = fract(vec2(c, r));
  vec2 near = mix(texelFetch(uValues, at, 0).rg, texelFetch(uValues, at + ivec2(1, 0), 0).rg, part.x);
  vec2 far = mix(texelFetch(uValues, at + ivec2(0, 1), 0).rg, texelFetch(uValues, at + 1, 0).rg, part.x);
  return mix(near, far, part.y);
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

/** A vertex in the box; info: value as part of the range, value above the floor, lowest meaningful column minus the column, time past the end; and how far above the window. */
vec3 place(float c, float r, out vec4 info, out float fast) {
  vec4 column = along(uColumns, c);
  vec4 row = along(uRows, r);
  vec2 cell = cellAt(c, r);
  info = vec4((cell.x - uValueRange.x) / (uValueRange.y - uValueRange.x), cell.x - column.y, row.y - column.x, row.x - uRowEnd);
  fast = cell.y;
  float shown = info.w > 0.0 ? uValueRange.x : max(cell.x, column.y);
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
out vec2 vMore;

void main() {
  vec2 inner = clamp(cell, vec2(0.0), uCells);
  float c = clamp(floor(uWindow.x) + inner.x * uStride.x, uWindow.x, uWindow.y);
  float r = clamp(floor(uWindow.z) + inner.y * uStride.y, uWindow.z, uWindow.w);
  vAt = place(c, r, vInfo, vMore.x);
  vMore.y = inner == cell ? 0.0 : 1.0;
  if (vMore.y > 0.0) vAt.y = -uHalf.y;
  gl_Position = uMatrix * vec4(vAt, 1.0);
}
`;

/** A slice takes the colour of its values, parted from them: towards the ink of the page, or its paper where they are strong. */
const sliceInk = /* glsl */ `
precision highp float;
precision highp sampler2D;
uniform sampler2D uColours;
uniform vec3 uBackground;
uniform vec3 uText;
uniform vec3 uNoise;
/** Where in the range colours begin to be strong, and the inverse of how far it is until they are. */
uniform vec2 uStrong;

vec3 colourOf(float part) {
  return texture(uColours, vec2(part * 0.99609375 + 0.001953125, 0.5)).rgb;
}

float strongOf(float part) {
  float strong = clamp((part - uStrong.x) * uStrong.y, 0.0, 1.0);
  return strong * strong * (3.0 - 2.0 * strong);
}

/** Quiet upon the floor, where nothing stands. */
float sliceOpacity(float part, bool noise) {
  return noise ? 0.4 : min(1.0, 0.35 + part * 11.0);
}
`;

/**
 * In software every branch costs, taken or not, and every vector four times: so each layer's share in the pixel is told
 * as one number, from the uppermost down, and colours are mixed once.
 */
export const bodyFragment = /* glsl */ `
${sliceInk}
uniform vec3 uHatch;
/** From the part of the range to the number of the iso-level, factor and offset; from the part to its place in the ramp at the bottom. */
uniform vec3 uIso;
/** From the time past the end to the number of the slice, factor and offset; first and last number. No factor, no slices. */
uniform vec4 uSlices;
uniform float uRatio;
uniform float uWallInk;
/** Value as part of the range, above the floor, below the lowest meaningful column, past the end. */
in vec4 vInfo;
in vec3 vAt;
/** Above the window; down a cut wall. */
in vec2 vMore;
out vec4 outColour;

void main() {
  float part = clamp(vInfo.x, 0.0, 1.0);
  bool noise = vInfo.y <= 0.0;
  bool unresolved = vInfo.z > 0.0;
  bool past = vInfo.w > 0.0;
  bool cut = vMore.y > 1e-4;
  // Cells are few pixels wide: the facets of a flat normal are not seen.
  vec3 normal = cross(dFdx(vAt), dFdy(vAt)) + vec3(0.0, 1e-12, 0.0);
  normal *= inversesqrt(dot(normal, normal)) * (normal.y < 0.0 ? -1.0 : 1.0);
  // Light from the upper left: enough to read the form, too little to change the level a colour stands for.
  float light = min(0.93 + dot(normal, vec3(-0.05535, 0.07548, 0.03522)), 1.03);

  // Lines of equal level, and slices where none are drawn upon the body; none where neither changes.
  vec2 level = vInfo.xw * vec2(uIso.x, uSlices.x) + vec2(uIso.y, uSlices.y);
  vec2 width = fwidth(level);
  vec2 away = abs(fract(level + 0.5) - 0.5) + step(width, vec2(1e-5));
  float near = min(away.y, min(abs(level.y - uSlices.z), abs(level.y - uSlices.w)));
  bool round = near < away.y || abs(fract(level.y * 0.2 + 0.5) - 0.5) < 0.1;
  vec2 pixels = vec2(away.x, near) / max(width, vec2(1e-5));
  // Crisp where the surface is steep enough to have a line at all; none along the bottom of what is shown.
  float iso = clamp(0.5 * uRatio + 1.0 - 1.25 * pixels.x, 0.0, 1.0) * clamp((0.3 - width.x) * 1.9, 0.0, 0.34);
  iso *= clamp(min(vInfo.y * 0.333, part * uIso.z - 0.5), 0.0, 1.0);
  float slice = clamp((round ? 0.7 : 0.5) * uRatio + 0.5 - pixels.y, 0.0, 1.0) * (round ? 1.0 : 0.7);
  slice *= cut || level.y > uSlices.y - 0.2 ? 0.0 : sliceOpacity(part, noise);

  float pitch = past ? 7.0 : unresolved ? 5.0 : 4.0;
  float across = (gl_FragCoord.x + (unresolved && !past ? -gl_FragCoord.y : gl_FragCoord.y)) / (uRatio * pitch);
  float hatch = clamp(0.5 * uRatio + 0.5 - (0.5 - abs(fract(across) - 0.5)) * pitch * 0.7071 * uRatio, 0.0, 1.0);

  // A cut wall lets a little of the surface through.
  float up = max(0.0, 1.0 - vMore.y);
  float wall = cut ? 1.0 - (past ? 0.0 : 0.3 * up * sqrt(up)) : 0.0;
  float rest = 1.0 - wall;
  slice *= rest;
  rest -= slice;
  hatch *= past || unresolved ? rest : 1.0;
  float struck = past || unresolved ? hatch : 0.0;
  rest -= struck;
  float paper = rest * (past ? 1.0 : unresolved ? 0.75 : 0.0);
  rest -= paper;
  float grey = noise ? rest : 0.0;
  rest -= grey;
  // No slower than the window itself: paler and hatched, as what says nothing of the room.
  float fast = rest * (vMore.x <= 0.0 ? 0.16 + 0.4 * hatch : 0.0);
  rest -= fast;
  iso *= rest;
  rest -= iso;

  float own = slice * (noise ? 0.75 : 0.55);
  float ink = iso + slice - own;
  float strong = noise ? 0.0 : ink * strongOf(part);
  outColour.rgb = colourOf(part) * (rest * light + (noise ? 0.0 : own))
    + uNoise * (grey * (0.97 + 0.03 * normal.y) + (noise ? own : 0.0))
    + uBackground * (paper + fast + strong + wall * (1.0 - uWallInk))
    + uText * (ink - strong + wall * uWallInk)
    + uHatch * struck;
  outColour.a = 1.0;
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
  float alpha = vValid < 0.999 ? 0.0 : mix(uDark ? 0.26 : 0.2, 0.06, vUp);
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
/** As of the body, but third: whether it stands anywhere. */
out vec4 vInfo;
/** Across it, and how wide it is. */
out vec2 vSide;

#ifdef CURTAIN
${curtainPlace}
#endif
vec4 project(float own, out vec4 info) {
  float valid = 1.0;
#ifdef CURTAIN
  bool further = line.x >= 2.0;
  info = vec4(0.0, 1.0, 0.0, 0.0);
  vec3 at = curtainAt(own, line.x - (further ? 2.0 : 0.0), further, valid);
#else
  vec2 index = uAcross ? vec2(line.x, own) : vec2(own, line.x);
  vec3 at = place(index.x, index.y, info, valid);
  valid = 1.0;
#endif
  info.z = valid;
  return uMatrix * vec4(at, 1.0);
}

void main() {
  float stride = uAcross ? uStride.y : uStride.x;
  float own = clamp(floor(line.y) + cell.x * stride, line.y, line.z);
  vec4 points[3];
  // Its neighbours give the direction; the vertex itself comes last, so that its own info is kept.
  for (int k = 0; k < 3; k += 1)
    points[k] = project(clamp(own + (k == 0 ? -stride : k == 1 ? stride : 0.0), line.y, line.z), vInfo);
  vec4 here = points[2];
  vec2 at = here.xy / here.w * uPixels;
  vec2 before = at - points[0].xy / points[0].w * uPixels;
  vec2 after = points[1].xy / points[1].w * uPixels - at;
  before /= max(length(before), 1e-4);
  after /= max(length(after), 1e-4);
  vec2 direction = before + after;
  direction = length(direction) > 0.3 ? normalize(direction) : after;
  float miter = 1.0 / max(0.625, max(dot(direction, before), dot(direction, after)));
  float reach = cell.y * (line.w * 0.5 + 1.0);
  here.xy += vec2(-direction.y, direction.x) * reach * miter / uPixels * here.w;
  here.z -= uLift * here.w;
  gl_Position = here;
  vInk = ink;
  vSide = vec2(reach, line.w);
}
`;

export const ribbonFragment = /* glsl */ `
${sliceInk}
in vec4 vInk;
in vec4 vInfo;
in vec2 vSide;
out vec4 outColour;

void main() {
  float alpha = clamp(vSide.y * 0.5 + 0.5 - abs(vSide.x), 0.0, 1.0) * min(1.0, vSide.y);
  float part = clamp(vInfo.x, 0.0, 1.0);
  bool noise = vInfo.y <= 0.0;
  bool slice = vInk.a < 0.0;
  vec3 colour = noise ? mix(uNoise, uText, 0.25) : mix(colourOf(part), mix(uText, uBackground, strongOf(part)), 0.45);
  colour = slice ? colour : vInk.rgb;
  alpha *= slice ? (vInfo.w > 0.0 ? 0.0 : -vInk.a * sliceOpacity(part, noise)) : vInk.a;
  alpha = vInfo.z < 0.999 ? 0.0 : alpha;
  outColour = vec4(colour * alpha, alpha);
}
`;
