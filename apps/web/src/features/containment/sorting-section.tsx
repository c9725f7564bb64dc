import { Anchor, Button, Checkbox, NumberInput, Select, TextInput } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { addSorting, type Containment, withdrawSorting } from '#contracts/containment.ts';
import { type Place, places } from '#contracts/containment-parts.ts';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './containment.module.css';
import { useWrite } from './queries.ts';

const blank = {
  place: 'stock' as Place,
  day: '',
  inspected: '' as number | string,
  found: 0 as number | string,
  sample: false,
  note: '',
};

/** Results of sorting, newest first; what was found is a failure report, counted once. */
export const SortingSection = ({ containment, mayWrite }: { containment: Containment; mayWrite: boolean }) => {
  const { t } = useTranslation('containment');
  const format = useFormat();
  const params = { id: containment.id };
  const withdraw = useWrite((sortingId: string) =>
    call(withdrawSorting, {
      params: { ...params, sortingId },
      version: containment.version,
      body: { reason: t('enteredWrongly') },
    }),
  );
  return (
    <section className={classes.section} aria-label={t('sorting')}>
      <h2>{t('sorting')}</h2>
      {containment.sortings.length === 0 && <p>{t('noSorting')}</p>}
      <ul className={classes.list}>
        {containment.sortings.map((it) => (
          <li key={it.id}>
            <span className={it.withdrawnAt ? classes.withdrawn : undefined}>
              {t('sortingLine', {
                day: format.day(it.day),
                place: t(`place.${it.place}`),
                inspected: format.count(it.inspected),
                found: format.count(it.found),
                by: it.by,
              })}
              {it.sample && ` · ${t('sampleShort')}`}
              {it.note && ` · ${it.note}`}
            </span>{' '}
            {it.withdrawnAt && t('withdrawn', { reason: it.withdrawReason })}
            {it.failureId && (
              <Anchor
                underline="always"
                inherit
                renderRoot={(props) => <Link {...props} to="/failures/$id" params={{ id: it.failureId! }} />}
              >
                {it.failureNumber}
              </Anchor>
            )}
            {mayWrite && !it.withdrawnAt && (
              <Button
                variant="subtle"
                size="compact-md"
                className="no-print"
                loading={withdraw.isPending}
                onClick={() => withdraw.mutate(it.id)}
              >
                {t('withdraw')}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {withdraw.error && <ProblemNote error={withdraw.error} />}
      {mayWrite && <SortingForm id={containment.id} />}
    </section>
  );
};

const SortingForm = ({ id }: { id: string }) => {
  const { t } = useTranslation('containment');
  const [values, setValues] = useState(blank);
  const [key, setKey] = useState(() => crypto.randomUUID());
  const set = (part: Partial<typeof blank>) => setValues({ ...values, ...part });
  const save = useWrite(() =>
    call(addSorting, {
      params: { id },
      idempotencyKey: key,
      body: { ...values, inspected: Number(values.inspected), found: Number(values.found), note: values.note || null },
    }),
  );
  const done = () => {
    setValues({ ...blank, place: values.place, day: values.day });
    setKey(crypto.randomUUID());
  };
  return (
    <form
      className={`${classes.form} no-print`}
      onSubmit={(event) => {
        event.preventDefault();
        save.mutate(undefined, { onSuccess: done });
      }}
    >
      <Select
        label={t('where')}
        allowDeselect={false}
        data={places.map((place) => ({ value: place, label: t(`place.${place}`) }))}
        value={values.place}
        onChange={(place) => set({ place: place as Place })}
      />
      <TextInput
        type="date"
        label={t('day')}
        required
        value={values.day}
        onChange={(event) => set({ day: event.currentTarget.value })}
      />
      <NumberInput
        label={t('inspected')}
        required
        min={1}
        allowDecimal={false}
        hideControls
        value={values.inspected}
        onChange={(inspected) => set({ inspected })}
      />
      <NumberInput
        label={t('found')}
        required
        min={0}
        allowDecimal={false}
        hideControls
        value={values.found}
        onChange={(found) => set({ found })}
      />
      <TextInput label={t('note')} value={values.note} onChange={(event) => set({ note: event.currentTarget.value })} />
      <Checkbox
        label={t('sample')}
        checked={values.sample}
        onChange={(event) => set({ sample: event.currentTarget.checked })}
      />
      <Button type="submit" variant="default" loading={save.isPending}>
        {t('addSorting')}
      </Button>
      {save.error && <ProblemNote error={save.error} />}
    </form>
  );
};
