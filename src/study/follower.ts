import type { Progress } from '../signal/index.js';
import { failureOf, type Failure } from './failure.js';
import type { Round } from './round.js';

export interface FollowerRequest<T> {
  /** What the result depends on, as text: the same key is the same result. */
  readonly key: string;
  readonly stage: string;
  readonly weight: number;
  /** The result where it is known already. */
  readonly known: T | undefined;
  readonly run: (signal: AbortSignal, onProgress: (progress: Progress) => void) => Promise<T>;
}

/**
 * One result that follows its inputs: at most one computation, that of the latest wish. What an earlier wish still
 * brings is dropped.
 */
export interface Follower<T> {
  readonly value: T | null;
  readonly failure: Failure | null;
  /** A first answer of the computation under way, where it has given one. */
  readonly draft: unknown;
  /** The key of `value` or `failure`; null where there is neither. */
  readonly key: string | null;
  /** `null` wishes for nothing: the value goes. */
  follow(request: FollowerRequest<T> | null): void;
  /** Lets the value go, as when it is of another recording; a computation under way goes on. */
  forget(): void;
}

export function createFollower<T>(round: Round, onChange: () => void): Follower<T> {
  let value: T | null = null;
  let failure: Failure | null = null;
  let draft: unknown = null;
  let key: string | null = null;
  let wanted: string | null = null;
  let stop: (() => void) | null = null;

  const settle = (newKey: string | null, newValue: T | null, newFailure: Failure | null): void => {
    key = newKey;
    draft = null;
    value = newValue;
    failure = newFailure;
  };

  return {
    get value() {
      return value;
    },
    get failure() {
      return failure;
    },
    get draft() {
      return draft;
    },
    get key() {
      return key;
    },
    forget: () => settle(null, null, null),
    follow(request) {
      if (request === null) {
        stop?.();
        stop = null;
        wanted = null;
        settle(null, null, null);
        return;
      }
      if (request.key === (stop ? wanted : key)) return;
      stop?.();
      stop = null;
      draft = null;
      wanted = request.key;
      if (request.known !== undefined) {
        settle(request.key, request.known, null);
        return;
      }
      const controller = new AbortController();
      const piece = round.begin(request.stage, request.weight);
      const end = (newValue: T | null, newFailure: Failure | null): void => {
        if (controller.signal.aborted) return;
        stop = null;
        piece.end();
        settle(request.key, newValue, newFailure);
        onChange();
      };
      stop = () => {
        controller.abort();
        piece.end();
      };
      request
        .run(controller.signal, (progress) => {
          piece.report(progress);
          if (progress.draft === undefined || controller.signal.aborted) return;
          draft = progress.draft;
          onChange();
        })
        .then(
          (result) => end(result, null),
          (thrown) => end(null, failureOf(thrown)),
        );
    },
  };
}
