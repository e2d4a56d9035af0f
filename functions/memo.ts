/** Memoising: answers that are kept because they cost more to work out again than to look up. */

/**
 * A memory of at most `limit` answers. Call it with a key and a function that makes the answer: a
 * key that is in the memory gives the kept answer, any other key calls the function and keeps what
 * it returns. The oldest answer leaves when the memory is full. What the function throws is thrown
 * on, and nothing is kept.
 */
export function remember<K, V>(limit: number): (key: K, make: () => V) => V {
  const answers = new Map<K, V>();
  return (key, make) => {
    const kept = answers.get(key);
    if (kept !== undefined || answers.has(key)) return kept as V;
    const answer = make();
    if (answers.size >= limit) answers.delete(answers.keys().next().value as K);
    answers.set(key, answer);
    return answer;
  };
}

/** The same for keys that are objects: an answer is kept as long as its key is in use elsewhere, without a limit. */
export function rememberWithObject<K extends WeakKey, V extends {}>(): (key: K, make: () => V) => V {
  const answers = new WeakMap<K, V>();
  return (key, make) => {
    const kept = answers.get(key);
    if (kept !== undefined) return kept;
    const answer = make();
    answers.set(key, answer);
    return answer;
  };
}

/**
 * The same for answers that rest on several objects and on something written in a text: all of them are the
 * key. Objects are given in the same order each time.
 */
export function rememberWithObjects<V extends {}>(): (
  objects: readonly WeakKey[],
  text: string,
  make: () => V,
) => V {
  interface Level {
    readonly next: WeakMap<WeakKey, Level>;
    readonly answers: Map<string, V>;
  }
  const level = (): Level => ({ next: new WeakMap(), answers: new Map() });
  const first = level();
  return (objects, text, make) => {
    let at = first;
    for (const one of objects) {
      let next = at.next.get(one);
      if (!next) {
        next = level();
        at.next.set(one, next);
      }
      at = next;
    }
    const kept = at.answers.get(text);
    if (kept !== undefined) return kept;
    const answer = make();
    at.answers.set(text, answer);
    return answer;
  };
}

/** The same as `remember` for keys that are equal when `isSame` says so; it compares them one by one, so `limit` should be small. */
export function rememberLike<K, V>(
  limit: number,
  isSame: (a: K, b: K) => boolean,
): (key: K, make: () => V) => V {
  const answers: { readonly key: K; readonly answer: V }[] = [];
  return (key, make) => {
    const kept = answers.find((one) => isSame(one.key, key));
    if (kept) return kept.answer;
    const answer = make();
    if (answers.length >= limit) answers.shift();
    answers.push({ key, answer });
    return answer;
  };
}
