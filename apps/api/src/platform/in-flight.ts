/** Requests that ask the same while the answer is on its way share it; nothing is kept once it has arrived. */
export function inFlight<Answer>(): (key: string, ask: () => Promise<Answer>) => Promise<Answer> {
  const asked = new Map<string, Promise<Answer>>();
  return (key, ask) => {
    const known = asked.get(key);
    if (known) return known;
    const answer = ask().finally(() => asked.delete(key));
    asked.set(key, answer);
    return answer;
  };
}
