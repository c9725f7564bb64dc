import { Button, NumberInput } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type Containment, statePlaces } from '#contracts/containment.ts';
import { type PlaceState, places } from '#contracts/containment-parts.ts';
import { call } from '#web/ui/http.ts';
import { useFormat } from '#web/ui/language.ts';
import { PlainWords } from '#web/ui/plain-words.tsx';
import { ProblemNote } from '#web/ui/problem.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import classes from './containment.module.css';
import { useWrite } from './queries.ts';

/** Where the suspect parts are, what sorting found there, and what that does not exclude. */
export const PlacesSection = ({ containment, mayWrite }: { containment: Containment; mayWrite: boolean }) => {
  const { t } = useTranslation('containment');
  const format = useFormat();
  const number = (value: number | null) => (value === null ? t('unknown') : format.count(value));
  return (
    <section className={classes.section} aria-label={t('places')}>
      <h2>{t('places')}</h2>
      <DataTable<PlaceState>
        caption={t('places')}
        hideCaption
        rows={containment.places}
        rowKey={({ place }) => place}
        columns={[
          { id: 'place', header: t('where'), rowHeader: true, phone: 'title', cell: (row) => t(`place.${row.place}`) },
          { id: 'quantity', header: t('stated'), align: 'end', cell: (row) => number(row.quantity) },
          { id: 'inspected', header: t('inspected'), align: 'end', cell: (row) => format.count(row.inspected) },
          { id: 'found', header: t('found'), align: 'end', cell: (row) => format.count(row.found) },
          { id: 'left', header: t('left'), align: 'end', cell: (row) => number(row.left) },
          {
            id: 'limit',
            header: t('limit'),
            cell: ({ limit }) =>
              limit === null
                ? '–'
                : limit.items === null
                  ? t('limitShare', { share: format.percent(limit.fraction) })
                  : t('limitItems', { count: limit.items, share: format.percent(limit.fraction) }),
          },
        ]}
      />
      <PlainWords>{t('meaning.limit')}</PlainWords>
      {mayWrite && <PlacesForm key={containment.version} containment={containment} />}
    </section>
  );
};

const PlacesForm = ({ containment }: { containment: Containment }) => {
  const { t } = useTranslation('containment');
  const [stated, setStated] = useState(
    Object.fromEntries(containment.places.map(({ place, quantity }) => [place, quantity ?? ''])) as Record<
      string,
      number | string
    >,
  );
  const save = useWrite(() =>
    call(statePlaces, {
      params: { id: containment.id },
      version: containment.version,
      body: {
        places: places.map((place) => ({
          place,
          quantity: stated[place] === '' ? null : Number(stated[place]),
          note: containment.places.find((it) => it.place === place)?.note ?? null,
        })),
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
      {places.map((place) => (
        <NumberInput
          key={place}
          label={t(`place.${place}`)}
          min={0}
          allowDecimal={false}
          hideControls
          w="8.5rem"
          value={stated[place] ?? ''}
          onChange={(value) => setStated({ ...stated, [place]: value })}
        />
      ))}
      <Button type="submit" variant="default" loading={save.isPending}>
        {t('savePlaces')}
      </Button>
      {save.error && <ProblemNote error={save.error} />}
    </form>
  );
};
