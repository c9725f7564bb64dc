import { Button, NumberInput, Select } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Finding } from '#contracts/evidence.ts';
import { type FindingCode, type FindingUnit, findingCatalogue } from '#contracts/finding-catalogue.ts';
import type { FindingDraft } from '../queries.ts';
import classes from './panel.module.css';

interface Props {
  code: FindingCode;
  taken: Finding | undefined;
  busy: boolean;
  onTake: (finding: FindingDraft) => void;
}

/** A measured value against the limit of the drawing; the two decide the answer. */
export const MeasureForm = ({ code, taken, busy, onTake }: Props) => {
  const { t } = useTranslation('evidence');
  const { unit: usual = 'mm', yesWhen = 'below' } = findingCatalogue[code];
  const [value, setValue] = useState<number | string>(taken?.value ?? '');
  const [limit, setLimit] = useState<number | string>(taken?.limit ?? '');
  const [unit, setUnit] = useState<FindingUnit>(usual);
  const units: FindingUnit[] = usual === 'N' ? ['N', 'lbf'] : [usual];
  const complete = typeof value === 'number' && typeof limit === 'number';
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (complete) onTake({ code, value, limit, unit });
      }}
    >
      <div className={classes.measure}>
        <NumberInput
          label={t('finding.value')}
          size="md"
          hideControls
          suffix={` ${t(`unit.${unit}`)}`}
          value={value}
          onChange={setValue}
        />
        <NumberInput
          label={t('finding.limit')}
          size="md"
          hideControls
          suffix={` ${t(`unit.${unit}`)}`}
          value={limit}
          onChange={setLimit}
        />
        {units.length > 1 && (
          <Select
            label={t('finding.unit')}
            size="md"
            data={units.map((it) => ({ value: it, label: t(`unit.${it}`) }))}
            value={unit}
            onChange={(it) => setUnit((it ?? usual) as FindingUnit)}
            allowDeselect={false}
          />
        )}
        <Button type="submit" size="lg" variant="default" disabled={!complete || busy}>
          {t('finding.save')}
        </Button>
      </div>
      <p className={classes.means}>{t(yesWhen === 'below' ? 'finding.below' : 'finding.above')}</p>
    </form>
  );
};
