import { Checkbox, Group, MultiSelect, NumberInput, Select, TagsInput } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { type Charts, chartKinds, limitModes, runRules } from '#contracts/charts.ts';
import { Day } from '#contracts/shared/scalars.ts';
import type { ChartsSearch } from './queries.ts';

interface Props {
  search: ChartsSearch;
  data: Charts | undefined;
  onChange: (patch: ChartsSearch) => void;
}

const usualRules: ChartsSearch['rule'] = ['sudden_jump', 'level_shift'];

export const ChartControls = ({ search, data, onChange }: Props) => {
  const { t } = useTranslation('charts');
  const limits = search.limits ?? 'phase';
  const suggested = data?.suggested ? t(`kind.${data.suggested.kind}`) : t('controls.none');
  return (
    <Group align="flex-end" gap="md" mb="lg" className="no-print">
      <Select
        label={t('controls.kind')}
        data={[
          { value: 'auto', label: t('controls.auto', { kind: suggested }) },
          ...chartKinds.map((value) => ({ value, label: t(`kind.${value}`) })),
        ]}
        value={search.kind ?? 'auto'}
        allowDeselect={false}
        w="17rem"
        maw="100%"
        onChange={(value) =>
          onChange({ kind: value === 'auto' ? undefined : (value as ChartsSearch['kind']) } as ChartsSearch)
        }
      />
      <Select
        label={t('controls.limits')}
        data={limitModes.map((value) => ({ value, label: t(`limits.${value}`) }))}
        value={limits}
        allowDeselect={false}
        onChange={(value) => onChange({ limits: value as 'phase' })}
      />
      {limits !== 'phase' && (
        <NumberInput
          label={t('controls.points')}
          min={5}
          max={104}
          allowDecimal={false}
          w="8rem"
          value={search.points ?? 20}
          onChange={(value) => typeof value === 'number' && value >= 5 && value <= 104 && onChange({ points: value })}
        />
      )}
      <MultiSelect
        label={t('controls.rules')}
        data={runRules.map((value) => ({ value, label: t(`rule.${value}`, { count: search.oneSide ?? 8 }) }))}
        value={search.rule ?? usualRules}
        maw="34rem"
        onChange={(value) =>
          onChange({ rule: (value.length ? value : usualRules) as ChartsSearch['rule'] } as ChartsSearch)
        }
      />
      <TagsInput
        label={t('controls.phases')}
        placeholder={t('controls.day')}
        value={search.phaseFrom ?? []}
        acceptValueOnBlur
        w="15rem"
        maw="100%"
        onChange={(days) => onChange({ phaseFrom: days.filter((day) => Day.safeParse(day).success) })}
      />
      <Checkbox
        label={t('controls.actions')}
        checked={search.actions ?? true}
        mb="xs"
        onChange={(event) => onChange({ actions: event.currentTarget.checked })}
      />
    </Group>
  );
};
