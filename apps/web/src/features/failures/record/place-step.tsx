import { Autocomplete, Button, Select } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Plant } from '#contracts/master-data.ts';
import { type Stage, stages } from '#contracts/taxonomy.ts';
import { useTerms } from '#web/ui/language.ts';
import { rowText } from '#web/ui/lookup.ts';
import { linesQuery, stagesQuery } from '../plant-data.ts';
import { marksQuery } from '../queries.ts';
import type { Place } from './place.ts';
import classes from './record.module.css';

interface Props {
  place: Place;
  plants: readonly Plant[];
  onChange: (patch: Partial<Place>) => void;
}

/** Where the tablet stands: one line to read once it is known, fields to change it. */
export const PlaceStep = ({ place, plants, onChange }: Props) => {
  const { t } = useTranslation('failures');
  const terms = useTerms();
  const plant = plants.find(({ id }) => id === place.plantId);
  const [editing, setEditing] = useState(!place.settled || plant === undefined);
  const lines = useQuery({ ...linesQuery(plant?.id ?? ''), enabled: plant !== undefined }).data ?? [];
  const own = useQuery({ ...stagesQuery(plant?.id ?? ''), enabled: plant !== undefined }).data ?? [];
  const stage = own.find(({ id }) => id === place.stageId)?.name ?? terms.stage[place.found];
  const done = () => {
    onChange({ plantId: place.plantId, settled: true });
    setEditing(false);
  };
  const line = lines.find(({ id }) => id === place.lineId);

  if (!editing && plant)
    return (
      <div className={classes.place}>
        <p>
          {[plant.name, line?.code, place.station, place.shift].filter(Boolean).join(' · ')}
          <br />
          <span className={classes.quiet}>{t('record.foundAt', { stage })}</span>
        </p>
        <Button size="lg" variant="default" onClick={() => setEditing(true)}>
          {t('record.changePlace')}
        </Button>
      </div>
    );
  return (
    <section className={classes.placeFields} aria-label={t('record.place')}>
      <Select
        size="lg"
        label={t('field.plant')}
        data={plants.map((row) => ({ value: row.id, label: rowText(row) }))}
        value={place.plantId}
        onChange={(plantId) =>
          onChange({ plantId, settled: false, lineId: null, stageId: null, station: null, shift: null })
        }
        allowDeselect={false}
        required
      />
      {plant && (
        <>
          <Select
            size="lg"
            label={t('field.line')}
            data={lines.map((row) => ({ value: row.id, label: rowText(row) }))}
            value={place.lineId}
            onChange={(lineId) => onChange({ lineId })}
            clearable
          />
          <Marks
            plantId={plant.id}
            field="station"
            value={place.station}
            onChange={(station) => onChange({ station })}
          />
          <Marks plantId={plant.id} field="shift" value={place.shift} onChange={(shift) => onChange({ shift })} />
          <Select
            size="lg"
            label={t('field.found')}
            data={
              own.length > 0
                ? own.map((row) => ({ value: row.id, label: row.name }))
                : stages.map((word) => ({ value: word, label: terms.stage[word] }))
            }
            value={own.length > 0 ? place.stageId : place.found}
            onChange={(value) => {
              const chosen = own.find(({ id }) => id === value);
              onChange({ stageId: chosen?.id ?? null, found: chosen?.common ?? (value as Stage) });
            }}
            allowDeselect={false}
            required
          />
          <Button size="lg" onClick={done} disabled={own.length > 0 && place.stageId === null}>
            {t('record.placeDone')}
          </Button>
        </>
      )}
    </section>
  );
};

interface MarksProps {
  plantId: string;
  field: 'station' | 'shift';
  value: string | null;
  onChange: (value: string | null) => void;
}

/** A mark typed freely, with those used lately offered. */
const Marks = ({ plantId, field, value, onChange }: MarksProps) => {
  const { t } = useTranslation('failures');
  const used = useQuery(marksQuery({ plantId, field })).data ?? [];
  return (
    <Autocomplete
      size="lg"
      label={t(`field.${field}`)}
      data={used}
      value={value ?? ''}
      onChange={(text) => onChange(text.trim() === '' ? null : text)}
      maxLength={80}
    />
  );
};
