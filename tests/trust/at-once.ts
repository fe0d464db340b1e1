/** So many requests are on their way at once: the server answers one while the next is sent and the last is read. */
const LANES = 4;

/** Does something with each of a list, a few at a time, and gives what came of them in the order of the list. */
export async function atOnce<T, R>(list: readonly T[], work: (one: T) => Promise<R>): Promise<R[]> {
  const done: R[] = new Array(list.length);
  let next = 0;
  const lane = async (): Promise<void> => {
    while (next < list.length) {
      const at = next++;
      done[at] = await work(list[at] as T);
    }
  };
  await Promise.all(Array.from({ length: LANES }, lane));
  return done;
}

/** So often it is asked again, and after so many seconds at most: a sender may ask again soon, a guesser of links only later. */
const [TRIES, SOON_SECONDS] = [20, 5];

interface Told {
  readonly status: number;
  readonly headers: { readonly "retry-after"?: string | undefined };
}

/** Asks as often as it is told to come back soon: an answer to too many requests says nothing of what was asked for. */
export async function askUntilHeard<T extends Told>(ask: () => Promise<T>): Promise<T> {
  let answer = await ask();
  for (let n = 0; n < TRIES && answer.status === 429; n++) {
    const seconds = Number(answer.headers["retry-after"] ?? SOON_SECONDS);
    if (seconds > SOON_SECONDS) break;
    await new Promise((resolve) => setTimeout(resolve, seconds * 1000));
    answer = await ask();
  }
  return answer;
}
