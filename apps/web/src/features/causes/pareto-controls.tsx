import { Group, SegmentedControl, Select } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { comparisons, measures } from '#contracts/analyses.ts';
import { dimensions } from '#contracts/shared/dimension.ts';
import classes from './causes.module.css';
import type { ParetoSearch } from './queries.ts';

interface Props {
  search: ParetoSearch;
  onChange: (patch: ParetoSearch) => void;
}

export const ParetoControls = ({ search, onChange }: Props) => {
  const { t } = useTranslation('causes');
  const choose = <Key extends 'dimension' | 'compare'>(key: Key) => ({
    allowDeselect: false,
    onChange: (value: string | null) => onChange({ [key]: value } as ParetoSearch),
  });
  return (
    <Group align="flex-end" gap="md" mb="lg" className="no-print">
      <Select
        label={t('controls.dimension')}
        data={dimensions.map((value) => ({ value, label: t(`dimension.${value}`) }))}
        value={search.dimension ?? 'cause'}
        maxDropdownHeight={360}
        {...choose('dimension')}
      />
      <div className={classes.measures}>
        <span id="measure-label" className={classes.label}>
          {t('controls.measure')}
        </span>
        <SegmentedControl
          aria-labelledby="measure-label"
          data={measures.map((value) => ({ value, label: t(`measure.${value}`) }))}
          value={search.measure ?? 'reports'}
          onChange={(value) => onChange({ measure: value as ParetoSearch['measure'] })}
        />
      </div>
      <Select
        label={t('controls.compare')}
        data={comparisons.map((value) => ({ value, label: t(`compare.${value}`) }))}
        value={search.compare ?? 'previous'}
        {...choose('compare')}
      />
    </Group>
  );
};
