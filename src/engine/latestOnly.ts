/** One request under way and at most one waiting: what a slider that is dragged faster than it is answered needs. */

interface Waiting<Request, Answer> {
  readonly request: Request;
  readonly resolve: (answer: Answer | null) => void;
  readonly reject: (error: unknown) => void;
}

/**
 * `work` with at most one call under way. A call made meanwhile waits; a newer one takes its place and the older
 * resolves to null. Answers keep the order of the calls.
 */
export function latestOnly<Request, Answer>(
  work: (request: Request) => Promise<Answer>,
): (request: Request) => Promise<Answer | null> {
  let underWay = false;
  let waiting: Waiting<Request, Answer> | null = null;

  async function run(next: Waiting<Request, Answer>): Promise<void> {
    underWay = true;
    try {
      next.resolve(await work(next.request));
    } catch (error) {
      next.reject(error);
    }
    underWay = false;
    const then = waiting;
    waiting = null;
    if (then !== null) void run(then);
  }

  return (request) =>
    new Promise((resolve, reject) => {
      const next = { request, resolve, reject };
      if (!underWay) {
        void run(next);
        return;
      }
      waiting?.resolve(null);
      waiting = next;
    });
}
