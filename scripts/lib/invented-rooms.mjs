/** Walls of the rooms of Radio Quillmarsh, a community station that exists only here. */

/** Boards on studs and deep linings that take every mode but those near 44 Hz. */
export const liveRoom = [
  { frequencyHz: 31, absorption: [0.35, 0.35, 0.3, 0.3, 0.35, 0.4] },
  { frequencyHz: 44, absorption: [0.1, 0.12, 0.06, 0.06, 0.12, 0.16] },
  { frequencyHz: 54, absorption: [0.35, 0.37, 0.3, 0.3, 0.25, 0.43] },
  { frequencyHz: 80, absorption: [0.5, 0.5, 0.45, 0.45, 0.4, 0.6] },
  { frequencyHz: 120, absorption: [0.65, 0.65, 0.6, 0.6, 0.55, 0.75] },
  { frequencyHz: 250, absorption: [0.75, 0.75, 0.7, 0.7, 0.65, 0.85] },
];
