import type { StudySnapshot } from '../study/types.js';
import { orderText } from './ridges.js';

type Room = NonNullable<StudySnapshot['room']>;
type Order = Parameters<typeof orderText>[0];

/** Of a box as the trade writes it; of a plan the number of its wave, and the order in height. */
export const orderName = (order: Order, { plan }: Room): string =>
  plan ? `${order[0]} + ${order[2]}` : orderText(order);
