import { NumberInput, SimpleGrid, TextInput } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { RowSelect } from '#web/ui/row-select.tsx';
import type { Draft } from './draft.ts';
import classes from './record.module.css';

interface Props {
  draft: Draft;
  plantId: string;
  onChange: (patch: Partial<Draft>) => void;
}
const marks = ['reelLot', 'housingLot', 'serialFrom'] as const;

/** What traces the fault further; helpful, never required. */
export const MoreStep = ({ draft, plantId, onChange }: Props) => {
  const { t } = useTranslation('failures');
  return (
    <details className={classes.moreStep}>
      <summary>{t('record.moreFields')}</summary>
      <SimpleGrid cols={{ base: 1, xs: 2 }} mt="sm">
        <RowSelect
          size="lg"
          resource="terminals"
          label={t('field.terminal')}
          value={draft.terminalId}
          onChange={(terminalId) => onChange({ terminalId })}
        />
        <RowSelect
          size="lg"
          resource="tools"
          label={t('record.tool')}
          plant={plantId}
          value={draft.toolId}
          onChange={(toolId) => onChange({ toolId })}
        />
        {marks.map((name) => (
          <TextInput
            key={name}
            size="lg"
            label={t(name === 'serialFrom' ? 'record.serial' : `field.${name}`)}
            maxLength={80}
            value={draft[name] ?? ''}
            onChange={(event) => onChange({ [name]: event.currentTarget.value || null })}
          />
        ))}
        <NumberInput
          size="lg"
          label={t('field.quantityInspected')}
          min={draft.quantityFound}
          allowDecimal={false}
          hideControls
          value={draft.quantityInspected ?? ''}
          onChange={(value) => onChange({ quantityInspected: value === '' ? null : Number(value) })}
          error={
            draft.quantityInspected !== null &&
            draft.quantityInspected < draft.quantityFound &&
            t('record.inspectedBelowFound')
          }
        />
        <TextInput
          size="lg"
          type="date"
          label={t('record.otherDay')}
          value={draft.foundOn ?? ''}
          onChange={(event) => onChange({ foundOn: event.currentTarget.value || null })}
        />
      </SimpleGrid>
    </details>
  );
};
