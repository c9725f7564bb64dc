import { Button, Group, NumberInput, SegmentedControl, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMediaQuery } from '@mantine/hooks';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useRef } from 'react';
import { useTranslation } from 'react-i18next';
import { gateMoney } from '#contracts/gates.ts';
import { computeWhatIf, type WhatIf, WhatIfInput } from '#contracts/what-if.ts';
import { escapesQuery } from '#web/features/escapes/queries.ts';
import { FilterBar } from '#web/ui/filter/filter-bar.tsx';
import { useFilter } from '#web/ui/filter/use-filter.ts';
import { checkedBy, refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { MoneyField } from '#web/ui/money-field.tsx';
import { ProblemNote } from '#web/ui/problem.tsx';
import { type Draft, draftOf, emptyDraft, inputOf, newOption } from './draft.ts';
import { KeepForm } from './keep-form.tsx';
import { OptionFields } from './option-fields.tsx';
import { ResultView } from './result-view.tsx';
import classes from './what-if.module.css';

const mostOptions = 12;

/** Inputs of a scenario above, what they give below. Nothing is kept until it has been computed. */
export const Editor = ({ kept }: { kept?: WhatIf }) => {
  const { t } = useTranslation('what-if');
  const [filter] = useFilter();
  const head = useQuery(escapesQuery(filter));
  const currency = head.data?.currency ?? kept?.currency ?? 'EUR';
  const form = useForm<Draft>({
    initialValues: kept ? draftOf(kept.input) : emptyDraft(t('kind.push_click_pull')),
    validate: (draft) => checkedBy(WhatIfInput)(inputOf(draft)),
  });
  const compute = useMutation({
    mutationFn: async (draft: Draft) => {
      const input = WhatIfInput.parse(inputOf(draft));
      return { input, filter, result: await call(computeWhatIf, { query: filter as object, body: input }) };
    },
    onError: (error) => form.setErrors(refusedFields(error)),
  });
  const upright = useMediaQuery('(max-width: 48em)', false, { getInitialValueInEffect: false });
  const { options } = form.values;
  const results = useRef<HTMLDivElement>(null);
  const typedIn = compute.data?.result.currency ?? kept?.currency ?? currency;
  const stale =
    compute.data !== undefined &&
    JSON.stringify([compute.data.input, compute.data.filter]) !== JSON.stringify([inputOf(form.values), filter]);

  return (
    <>
      <FilterBar always period={head.data?.period} currency={currency} />
      <form
        noValidate
        onSubmit={form.onSubmit((draft) =>
          compute.mutate(draft, { onSuccess: () => setTimeout(() => results.current?.focus(), 0) }),
        )}
      >
        <Text className={classes.quiet} mb="sm">
          {t('option.help')}
        </Text>
        {options.map(({ key }, index) => (
          <OptionFields key={key} form={form} index={index} currency={currency} />
        ))}
        <Button
          variant="default"
          mb="lg"
          disabled={options.length >= mostOptions}
          onClick={() => form.insertListItem('options', newOption(options, 'own', ''))}
        >
          {t('option.add')}
        </Button>
        <Group align="flex-end" gap="md" mb="md">
          <NumberInput
            label={t('horizon')}
            min={0.5}
            max={15}
            decimalScale={1}
            w="10rem"
            {...form.getInputProps('horizonYears')}
          />
          <MoneyField
            label={t('budget')}
            currency={currency}
            min={0}
            value={form.values.budgetMinor}
            onChange={(minor) => form.setFieldValue('budgetMinor', minor)}
            error={form.errors.budgetMinor}
          />
          <NumberInput
            label={t('seed')}
            min={0}
            allowDecimal={false}
            hideControls
            w="8rem"
            {...form.getInputProps('seed')}
          />
          <SegmentedControl
            aria-label={t('money.label')}
            data={gateMoney.map((value) => ({ value, label: t(`money.${value}`) }))}
            orientation={upright ? 'vertical' : 'horizontal'}
            {...form.getInputProps('money')}
          />
        </Group>
        {form.errors.together && (
          <Text role="alert" c="red.9">
            {t('noneChosen')}
          </Text>
        )}
        {typedIn !== currency && (
          <Text role="alert" fw={600} c="red.9">
            {t('currencyChanged', { before: typedIn, now: currency })}
          </Text>
        )}
        {compute.isError && <ProblemNote error={compute.error} />}
        <Button type="submit" loading={compute.isPending}>
          {t('compute')}
        </Button>
      </form>
      {compute.data && (
        <section ref={results} tabIndex={-1} aria-label={t('result.label')} style={{ marginTop: '2rem' }}>
          {stale && (
            <Text role="status" fw={600} mb="sm">
              {t('stale')}
            </Text>
          )}
          <ResultView input={compute.data.input} result={compute.data.result} filter={compute.data.filter} />
          {!stale && <KeepForm computed={compute.data} kept={kept} />}
        </section>
      )}
    </>
  );
};
