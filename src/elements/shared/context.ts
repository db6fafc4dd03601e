import { createContext } from '@lit/context';
import type { Feed } from './feed.js';

/** What a ringdown-study hands to the elements in it. */
export const feedContext = createContext<Feed | null>('ringdown-feed');
