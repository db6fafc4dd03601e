import { createFollower, type Follower, type FollowerRequest } from './follower.js';
import type { Failure } from './failure.js';
import type { Round } from './round.js';

/** One result per owner (a recording), each following its own inputs. */
export interface Followers<T> {
  /** Owners that are not named are let go with their results and computations. Begun in the order of the map. */
  follow(requests: ReadonlyMap<object, FollowerRequest<T>>): void;
  /** The results of these owners; the same array as the last time where nothing changed. */
  values(owners: readonly object[]): readonly (T | null)[];
  failure(owner: object): Failure | null;
}

export function createFollowers<T>(round: Round, onChange: () => void): Followers<T> {
  const followers = new Map<object, Follower<T>>();
  let last: readonly (T | null)[] = [];
  return {
    follow(requests) {
      for (const [owner, follower] of [...followers])
        if (!requests.has(owner)) {
          follower.follow(null);
          followers.delete(owner);
        }
      for (const [owner, request] of requests) {
        let follower = followers.get(owner);
        if (!follower) followers.set(owner, (follower = createFollower<T>(round, onChange)));
        follower.follow(request);
      }
    },
    values(owners) {
      const now = followers.size === 0 ? [] : owners.map((owner) => followers.get(owner)?.value ?? null);
      if (now.length !== last.length || now.some((value, k) => value !== last[k])) last = now;
      return last;
    },
    failure: (owner) => followers.get(owner)?.failure ?? null,
  };
}
