import { Select } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { keepPreviousData, useQueries, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Housing } from '#contracts/master-data.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { rowText } from '#web/ui/lookup.ts';
import { CavityPicture } from '../cavity-picture.tsx';
import { housingQuery, housingsQuery } from '../plant-data.ts';
import { ChoiceButtons } from './choice-buttons.tsx';
import classes from './record.module.css';

interface Props {
  recent: readonly string[];
  housing: Housing | undefined;
  cavities: readonly string[];
  onHousing: (id: string | null) => void;
  onCavities: (cavities: string[]) => void;
}

/** Which housing, mostly one of the last used, and which of its cavities. */
export const HousingStep = ({ recent, housing, cavities, onHousing, onCavities }: Props) => {
  const { t } = useTranslation('failures');
  const [typed, setTyped] = useState('');
  const [q] = useDebouncedValue(housing && typed === rowText(housing) ? '' : typed.trim(), 200);
  const found = useQuery({ ...housingsQuery(q), placeholderData: keepPreviousData }).data ?? [];
  const known = useQueries({ queries: recent.map(housingQuery) }).flatMap(({ data }) => data ?? []);
  const rows = new Map([...(housing ? [housing] : []), ...found].map((row) => [row.id, row]));

  return (
    <>
      {known.length > 0 && (
        <ChoiceButtons
          name="housing"
          legend={t('record.housing')}
          options={known.map(({ id, code }) => ({ value: id, label: code }))}
          value={housing?.id ?? null}
          onChange={onHousing}
        />
      )}
      <Select
        size="lg"
        label={t(known.length > 0 ? 'record.otherHousing' : 'record.housing')}
        data={[...rows.values()].map((row) => ({ value: row.id, label: rowText(row) }))}
        value={housing?.id ?? null}
        onChange={onHousing}
        searchable
        clearable
        clearButtonProps={{ 'aria-label': t('record.noHousing') }}
        searchValue={typed}
        onSearchChange={setTyped}
        nothingFoundMessage={t('record.housingNotFound')}
      />
      {!housing && <p className={classes.hint}>{t('record.housingHint')}</p>}
      {housing?.safetyRelevant && <Cautions about={['safety']} />}
      {housing && (
        <>
          <p className={classes.legend}>
            {t('record.cavities')}
            {cavities.length > 0 && <strong>: {cavities.join(', ')}</strong>}
          </p>
          <CavityPicture face={housing} chosen={cavities} onChange={onCavities} label={t('cavity.pick')} />
        </>
      )}
    </>
  );
};
