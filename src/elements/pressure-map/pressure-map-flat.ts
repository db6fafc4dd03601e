import { PressureMapBase } from './pressure-map-base.js';

/** The pressure map of the build without three dimensions: plan and section. */
export class RingdownPressureMapFlat extends PressureMapBase {}
