import { useCallback, useEffect, useRef, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { usePlants } from '#web/ui/lookup.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { may, usePerson } from '#web/ui/person.ts';
import { Done, type Recorded } from './done.tsx';
import { keepForOffline } from './offline.ts';
import { dropWaiting, type Waiting } from './outbox/store.ts';
import { useSent } from './outbox/use-outbox.ts';
import { WaitingList } from './outbox/waiting-list.tsx';
import { RecordForm } from './record-form.tsx';
import { useDraft } from './use-draft.ts';

/** The line's form: what failed, where, how many, a photo; kept on the device until the server has it. */
export const RecordPage = () => {
  const { t } = useTranslation('failures');
  const person = usePerson();
  const plants = usePlants().filter(({ id }) => may(person, 'failures.write', id));
  const form = useDraft(person.id);
  const [recorded, setRecorded] = useState<Recorded>();
  const [numbers, setNumbers] = useState<Readonly<Record<string, string>>>({});
  const top = useRef<HTMLDivElement>(null);

  useEffect(() => {
    keepForOffline().catch(() => undefined);
  }, []);
  useSent(useCallback((id, number) => setNumbers((known) => ({ ...known, [id]: number })), []));
  const takeBack = async (report: Waiting) => {
    form.change({ ...report.draft, photos: report.photos });
    await dropWaiting(report.id);
  };

  return (
    <>
      <PageHead title={t('record.title')} />
      <div ref={top} tabIndex={-1} style={{ outline: 'none' }}>
        {recorded && <Done recorded={recorded} number={numbers[recorded.id]} />}
      </div>
      <WaitingList onTakeBack={(report) => void takeBack(report)} />
      {plants.length > 0 && form.draft && (
        <RecordForm
          plants={plants}
          draft={form.draft}
          onChange={form.change}
          onRecorded={async (done) => {
            setRecorded(done);
            await form.clear();
            top.current?.focus();
            scrollTo({ top: 0 });
          }}
        />
      )}
      {plants.length === 0 && <EmptyNote title={t('record.noPlant')}>{t('record.noPlantText')}</EmptyNote>}
    </>
  );
};
