import { Button, Group, NumberInput, SegmentedControl, Select, SimpleGrid, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import type { z } from 'zod';
import { addCost, CostItemInput, type Report } from '#contracts/failures.ts';
import { currencies } from '#contracts/shared/currency.ts';
import { costBases, costCategories } from '#contracts/taxonomy.ts';
import { checkedBy, refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { useTerms } from '#web/ui/language.ts';
import { MoneyField } from '#web/ui/money-field.tsx';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useReportWrite } from '../queries.ts';

type Draft = z.input<typeof CostItemInput>;
const byTheMinute: readonly string[] = ['rework_labour', 'sorting', 'line_stop'];

export const CostForm = ({ report, onDone }: { report: Report; onDone: () => void }) => {
  const { t } = useTranslation('failures');
  const terms = useTerms();
  const [key] = useState(uuidv7);
  const form = useForm<Draft>({
    initialValues: {
      category: 'rework_labour',
      basis: 'booked',
      incurredOn: report.foundOn,
      currency: report.cost.currency,
      note: null,
    },
    validate: checkedBy(CostItemInput),
  });
  const save = useReportWrite((body: Draft) => call(addCost, { params: { id: report.id }, body, idempotencyKey: key }));
  const { category, currency, amountMinor, minutes } = form.values;
  const setCategory = (word: string | null) =>
    form.setValues({
      category: word as Draft['category'],
      ...(byTheMinute.includes(word ?? '') ? {} : { minutes: undefined }),
    });
  const submit = (body: Draft) =>
    void save.mutateAsync(body).then(onDone, (error: unknown) => form.setErrors(refusedFields(error)));

  return (
    <form onSubmit={form.onSubmit(submit)} noValidate>
      <Stack gap="sm">
        <SegmentedControl
          aria-label={t('cost.basis')}
          data={costBases.map((basis) => ({ value: basis, label: terms.costBasis[basis] }))}
          {...form.getInputProps('basis')}
        />
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <Select
            label={t('cost.category')}
            data={costCategories.map((word) => ({ value: word, label: terms.costCategory[word] }))}
            value={category}
            onChange={setCategory}
            allowDeselect={false}
          />
          <TextInput type="date" label={t('cost.day')} required {...form.getInputProps('incurredOn')} />
          <MoneyField
            label={t('cost.amount')}
            currency={currency}
            value={amountMinor}
            onChange={(value) => form.setFieldValue('amountMinor', value)}
            disabled={minutes !== undefined}
            error={form.errors.amountMinor}
          />
          <Select
            label={t('cost.currency')}
            data={[...currencies]}
            searchable
            allowDeselect={false}
            {...form.getInputProps('currency')}
          />
          {byTheMinute.includes(category) && (
            <NumberInput
              label={t('cost.orMinutes')}
              description={t('cost.minutesHelp')}
              min={1}
              allowDecimal={false}
              value={minutes ?? ''}
              onChange={(value) => form.setFieldValue('minutes', value === '' ? undefined : Number(value))}
              disabled={amountMinor !== undefined}
              error={form.errors.minutes}
            />
          )}
        </SimpleGrid>
        <TextInput
          label={t('field.note')}
          maxLength={500}
          value={form.values.note ?? ''}
          onChange={(event) => form.setFieldValue('note', event.currentTarget.value || null)}
        />
        {save.error && <ProblemNote error={save.error} />}
        <Group>
          <Button type="submit" loading={save.isPending}>
            {t('cost.save')}
          </Button>
          <Button variant="default" onClick={onDone}>
            {t('form.cancel')}
          </Button>
        </Group>
      </Stack>
    </form>
  );
};
