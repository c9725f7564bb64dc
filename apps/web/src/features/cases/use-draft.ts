import { useEffect, useState } from 'react';
import type { CaseContent, PartName } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import { ProblemError } from '#web/ui/http.ts';
import { type Clash, merge } from './merge.ts';
import { useSavePart } from './queries.ts';

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** A part being edited. When somebody else saved it first, both people's changes are joined and the clashes are named. */
export function useDraft<Name extends PartName>(of: Case, name: Name, refresh: () => Promise<Case>) {
  const part = of.parts[name];
  const [base, setBase] = useState({ content: part.content as CaseContent[Name], version: part.version });
  const [draft, setDraft] = useState(base.content);
  const [clashes, setClashes] = useState<Clash[] | null>(null);
  const save = useSavePart(of.id, name);
  const dirty = !same(draft, base.content);

  useEffect(() => {
    if (dirty || part.version === base.version) return;
    setBase({ content: part.content as CaseContent[Name], version: part.version });
    setDraft(part.content as CaseContent[Name]);
  }, [dirty, part, base.version]);

  const take = (it: Case) => {
    const { content, version } = it.parts[name];
    setBase({ content: content as CaseContent[Name], version });
    return content as CaseContent[Name];
  };
  const submit = () =>
    save.mutate(
      { version: base.version, content: draft },
      {
        onSuccess: (it) => {
          setDraft(take(it));
          setClashes(null);
        },
        onError: async (error) => {
          if (!(error instanceof ProblemError) || error.problem.status !== 412) return;
          const old = base.content;
          const merged = merge(old, draft, take(await refresh()));
          setDraft(merged.content as CaseContent[Name]);
          setClashes(merged.clashes);
          save.reset();
        },
      },
    );
  return { draft, setDraft, dirty, submit, clashes, pending: save.isPending, error: save.error };
}
