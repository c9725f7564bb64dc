import { useEffect, useRef, useState } from 'react';
import { blankDraft, type Draft } from './draft.ts';
import { dropDraft, keepDraft, readDraft } from './outbox/store.ts';

/** The form's content, kept on this device as it is typed; null until it has been read back. */
export const useDraft = (personId: string) => {
  const [draft, setDraft] = useState<Draft | null>(null);
  const touched = useRef(false);

  useEffect(() => {
    readDraft(personId).then(
      (kept) => setDraft({ ...blankDraft, ...kept }),
      () => setDraft(blankDraft),
    );
  }, [personId]);
  useEffect(() => {
    if (draft && touched.current) void keepDraft(personId, draft).catch(() => undefined);
  }, [draft, personId]);

  return {
    draft,
    change: (patch: Partial<Draft>) => {
      touched.current = true;
      setDraft((now) => now && { ...now, ...patch });
    },
    clear: async () => {
      touched.current = false;
      setDraft(blankDraft);
      await dropDraft(personId);
    },
  };
};
