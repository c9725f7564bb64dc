import { ActionIcon, NumberInput, Select } from '@mantine/core';
import type { UseFormReturnType } from '@mantine/form';
import { IconX } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import { type Cause, causes } from '#contracts/taxonomy.ts';
import { useTerms } from '#web/ui/language.ts';
import { type Draft, type DraftEffect, toPercent } from './draft.ts';
import { JudgedSelect } from './judged-select.tsx';
import classes from './what-if.module.css';

interface Props {
  form: UseFormReturnType<Draft>;
  /** Path of the effect in the form. */
  path: string;
  onDrop: (() => void) | undefined;
}

const sortable = causes.filter((cause) => cause !== 'undetermined');

/** One cause that an option acts on, and how much of it is prevented. */
export const EffectRow = ({ form, path, onDrop }: Props) => {
  const { t } = useTranslation('what-if');
  const terms = useTerms();
  const effect: DraftEffect = form.getInputProps(path).value;
  const replace = (patch: Partial<DraftEffect>) => form.setFieldValue(path, { ...effect, ...patch });
  return (
    <>
      <div className={classes.effect}>
        <Select
          label={t('effect.cause')}
          data={sortable.map((cause) => ({ value: cause, label: terms.cause[cause] }))}
          {...form.getInputProps(`${path}.cause`)}
          onChange={(cause) => replace({ cause: cause as Cause | null, actionId: null })}
        />
        {(['low', 'likely', 'high'] as const).map((name) => (
          <NumberInput
            key={name}
            label={t(`effect.${name}`)}
            min={0}
            max={100}
            decimalScale={2}
            suffix=" %"
            hideControls
            {...form.getInputProps(`${path}.${name}`)}
            onChange={(typed) => replace({ [name]: typed === '' ? '' : Number(typed), actionId: null })}
          />
        ))}
        {onDrop && (
          <ActionIcon variant="default" size="lg" aria-label={t('effect.drop')} onClick={onDrop}>
            <IconX size={18} aria-hidden />
          </ActionIcon>
        )}
      </div>
      <JudgedSelect
        cause={effect.cause}
        actionId={effect.actionId}
        onTake={(judged) =>
          replace(
            judged
              ? {
                  low: toPercent(judged.reduction.low),
                  likely: toPercent(judged.reduction.likely),
                  high: toPercent(judged.reduction.high),
                  actionId: judged.actionId,
                }
              : { actionId: null },
          )
        }
      />
    </>
  );
};
