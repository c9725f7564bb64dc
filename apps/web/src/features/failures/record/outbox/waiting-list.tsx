import { Button, Group } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { ConfirmButton } from '#web/ui/confirm-button.tsx';
import { useFormat } from '#web/ui/language.ts';
import { usePerson } from '#web/ui/person.ts';
import classes from './outbox.module.css';
import { dropWaiting, keepWaiting, type Waiting } from './store.ts';
import { sendNow, useWaiting } from './use-outbox.ts';

/** What waits on this device, and what the server refused. */
export const WaitingList = ({ onTakeBack }: { onTakeBack: (report: Waiting) => void }) => {
  const { t } = useTranslation('failures');
  const { id: personId } = usePerson();
  const waiting = useWaiting();
  if (waiting.length === 0) return null;
  return (
    <section className={classes.list} aria-labelledby="waiting">
      <Group justify="space-between">
        <h2 id="waiting">{t('outbox.waiting', { count: waiting.length })}</h2>
        <Button variant="default" size="md" onClick={() => void sendNow(personId)}>
          {t('outbox.sendNow')}
        </Button>
      </Group>
      <ul>
        {waiting.map((report) => (
          <Item key={report.id} report={report} onTakeBack={onTakeBack} />
        ))}
      </ul>
    </section>
  );
};

const Item = ({ report, onTakeBack }: { report: Waiting; onTakeBack: (report: Waiting) => void }) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const { id: personId } = usePerson();
  const state = () => {
    if (report.personId !== personId) return t('outbox.ofAnother');
    if (report.refusal !== null) return t('outbox.refused', { reason: report.refusal });
    return report.number === null
      ? t('outbox.waits')
      : t('outbox.photosLeft', { count: report.photos.length, number: report.number });
  };
  return (
    <li data-refused={report.refusal !== null || undefined}>
      <span>
        <strong>{report.label}</strong> · {format.instant(report.recordedAt)}
        <br />
        {state()}
      </span>
      {report.refusal !== null && report.personId === personId && (
        <Group gap="xs">
          <Button size="md" variant="default" onClick={() => void keepWaiting({ ...report, refusal: null })}>
            {t('outbox.again')}
          </Button>
          {report.number === null && (
            <Button size="md" variant="default" onClick={() => onTakeBack(report)}>
              {t('outbox.correct')}
            </Button>
          )}
          <ConfirmButton
            size="md"
            question={t('outbox.discardQuestion')}
            confirm={t('outbox.discard')}
            onConfirm={() => dropWaiting(report.id)}
          >
            {t('outbox.discard')}
          </ConfirmButton>
        </Group>
      )}
    </li>
  );
};
