import { Button, TextInput } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type Containment, closeContainment, reopenContainment, setCleanPoint } from '#contracts/containment.ts';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './containment.module.css';
import { useWrite } from './queries.ts';

interface Props {
  containment: Containment;
  mayWrite: boolean;
  mayChange: boolean;
}

/** From where on parts are good, and the end of the containment. */
export const CleanSection = ({ containment, mayWrite, mayChange }: Props) => {
  const { t } = useTranslation('containment');
  const format = useFormat();
  const from = [
    containment.cleanFrom && format.day(containment.cleanFrom),
    containment.cleanSerial,
    containment.cleanLot,
  ].filter(Boolean);
  return (
    <section className={classes.section} aria-label={t('clean.title')}>
      <h2>{t('clean.title')}</h2>
      {containment.cleanAt ? (
        <p>{t('clean.is', { from: from.join(', '), by: containment.cleanBy, reason: containment.cleanReason })}</p>
      ) : (
        <p>{t('clean.none')}</p>
      )}
      {containment.closedAt && <p>{t('closedBecause', { by: containment.closedBy, note: containment.closingNote })}</p>}
      {mayWrite && <CleanForm containment={containment} />}
      {mayChange && <EndForm containment={containment} />}
    </section>
  );
};

const CleanForm = ({ containment }: { containment: Containment }) => {
  const { t } = useTranslation('containment');
  const [values, setValues] = useState({ from: '', serial: '', lot: '', reason: '' });
  const save = useWrite(() =>
    call(setCleanPoint, {
      params: { id: containment.id },
      version: containment.version,
      body: {
        from: values.from || null,
        serial: values.serial || null,
        lot: values.lot || null,
        reason: values.reason,
      },
    }),
  );
  return (
    <form
      className={`${classes.form} no-print`}
      onSubmit={(event) => {
        event.preventDefault();
        save.mutate(undefined);
      }}
    >
      {(['from', 'serial', 'lot', 'reason'] as const).map((name) => (
        <TextInput
          key={name}
          type={name === 'from' ? 'date' : 'text'}
          label={t(`clean.${name}`)}
          required={name === 'reason'}
          value={values[name]}
          onChange={(event) => setValues({ ...values, [name]: event.currentTarget.value })}
        />
      ))}
      <Button type="submit" variant="default" loading={save.isPending}>
        {t('clean.save')}
      </Button>
      {save.error && <ProblemNote error={save.error} />}
    </form>
  );
};

const EndForm = ({ containment }: { containment: Containment }) => {
  const { t } = useTranslation('containment');
  const [text, setText] = useState('');
  const closed = containment.closedAt !== null;
  const of = { params: { id: containment.id }, version: containment.version };
  const change = useWrite(() =>
    closed
      ? call(reopenContainment, { ...of, body: { reason: text } })
      : call(closeContainment, { ...of, body: { note: text } }),
  );
  return (
    <form
      className={`${classes.form} no-print`}
      onSubmit={(event) => {
        event.preventDefault();
        change.mutate(undefined, { onSuccess: () => setText('') });
      }}
    >
      <TextInput
        label={t(closed ? 'reopenReason' : 'closeNote')}
        required
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <Button type="submit" variant="default" loading={change.isPending}>
        {t(closed ? 'reopen' : 'close')}
      </Button>
      {change.error && <ProblemNote error={change.error} />}
    </form>
  );
};
