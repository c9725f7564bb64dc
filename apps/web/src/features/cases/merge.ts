/** Two people changed the same part: what each changed is kept, and where both changed one thing the person chooses. Pure. */

export interface Clash {
  path: string;
  mine: unknown;
  theirs: unknown;
}
export interface Merged {
  content: unknown;
  clashes: Clash[];
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
const isRow = (it: unknown): it is { id: string } => typeof it === 'object' && it !== null && 'id' in it;
const isRows = (it: unknown): it is { id: string }[] => Array.isArray(it) && it.every(isRow);
const isRecord = (it: unknown): it is Record<string, unknown> =>
  typeof it === 'object' && it !== null && !Array.isArray(it);

function mergeRows(base: { id: string }[], mine: { id: string }[], theirs: { id: string }[], path: string): Merged {
  const clashes: Clash[] = [];
  const find = (rows: { id: string }[], id: string) => rows.find((row) => row.id === id);
  const ids = [...new Set([...theirs, ...mine].map(({ id }) => id))];
  const rows = ids.flatMap((id) => {
    const [old, my, their] = [find(base, id), find(mine, id), find(theirs, id)];
    // What one took away and the other left as it was, is gone; what the other changed, stays.
    if (old && (!my || !their)) {
      const kept = my ?? their;
      return kept && !same(kept, old) ? [kept] : [];
    }
    if (!my || !their) return [my ?? their];
    const merged = merge(old ?? {}, my, their, `${path}/${id}`);
    clashes.push(...merged.clashes);
    return [merged.content];
  });
  return { content: rows, clashes };
}

/** Three-way: `base` is what both began with. Where both changed the same field, mine stands and the clash is named. */
export function merge(base: unknown, mine: unknown, theirs: unknown, path = ''): Merged {
  if (same(mine, theirs) || same(mine, base)) return { content: theirs, clashes: [] };
  if (same(theirs, base)) return { content: mine, clashes: [] };
  if (isRows(mine) && isRows(theirs)) return mergeRows(isRows(base) ? base : [], mine, theirs, path);
  if (isRecord(mine) && isRecord(theirs)) {
    const old = isRecord(base) ? base : {};
    const clashes: Clash[] = [];
    const content = Object.fromEntries(
      [...new Set([...Object.keys(theirs), ...Object.keys(mine)])].map((key) => {
        const merged = merge(old[key], mine[key], theirs[key], `${path}/${key}`);
        clashes.push(...merged.clashes);
        return [key, merged.content];
      }),
    );
    return { content, clashes };
  }
  return { content: mine, clashes: [{ path, mine, theirs }] };
}
