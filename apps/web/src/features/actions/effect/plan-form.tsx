import { Button, Group, Modal, MultiSelect, NumberInput, Select, Stack, Switch, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import type { ActionOf } from '#contracts/actions.ts';
import { EffectPlanInput } from '#contracts/effects.ts';
import { type Cause, causes, causeTaxonomy, sources } from '#contracts/taxonomy.ts';
import { useTerms } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { RowSelect } from '#web/ui/row-select.tsx';
import { previewQuery, useActionWrites } from '../queries.ts';
import { ProofText } from './proof-text.tsx';

interface Props {
  action: ActionOf;
  plan: EffectPlanInput | null;
  onDone: () => void;
}

const day = (ahead: number): string => new Date(Date.now() + ahead * 86_400_000).toISOString().slice(0, 10);

/** States what would count as proof; shows what that takes while it is filled in. */
export const PlanForm = ({ action, plan, onDone }: Props) => {
  const { t } = useTranslation('actions');
  const terms = useTerms();
  const { plan: save } = useActionWrites();
  const form = useForm({
    initialValues: {
      cause: (plan?.scope.cause ?? null) as Cause | null,
      subCause: plan?.scope.subCause ?? null,
      housingId: plan?.scope.housingId ?? null,
      terminalId: plan?.scope.terminalId ?? null,
      toolId: plan?.scope.toolId ?? null,
      lineId: plan?.scope.lineId ?? null,
      customerId: plan?.scope.customerId ?? null,
      sources: plan?.scope.sources ?? [],
      from: plan?.before.from ?? day(-182),
      to: plan?.before.to ?? day(0),
      cleanPoint: plan?.cleanPoint ?? action.dueOn,
      reduction: plan ? plan.reduction * 100 : (80 as number | ''),
      reopen: plan ? plan.onRecurrence === 'reopen' : true,
    },
  });
  const { from, to, cleanPoint, reduction, reopen, ...scope } = form.values;
  const stated = EffectPlanInput.safeParse({
    scope,
    before: { from, to },
    cleanPoint,
    reduction: Number(reduction) / 100,
    onRecurrence: reopen ? 'reopen' : 'tell',
  });
  const preview = useQuery(previewQuery(stated.success ? { ...stated.data, plantId: action.plantId } : null));
  const row = (
    resource: 'housings' | 'terminals' | 'tools' | 'lines' | 'customers',
    field: 'housingId' | 'terminalId' | 'toolId' | 'lineId' | 'customerId',
  ) => (
    <RowSelect
      resource={resource}
      label={t(`plan.${field}`)}
      plant={resource === 'tools' || resource === 'lines' ? action.plantId : null}
      value={form.values[field]}
      onChange={(id) => form.setFieldValue(field, id)}
    />
  );

  return (
    <Modal
      opened
      onClose={onDone}
      title={t('effect.state')}
      size="xl"
      closeButtonProps={{ 'aria-label': t('form.close') }}
    >
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (stated.success) save.mutate({ action, body: stated.data }, { onSuccess: onDone });
        }}
      >
        <Stack>
          <p>{t('plan.lead')}</p>
          <Group grow align="flex-start">
            <Select
              label={t('plan.cause')}
              clearable
              data={causes.map((value) => ({ value, label: terms.cause[value] }))}
              value={form.values.cause}
              onChange={(cause) => form.setValues({ cause: cause as Cause | null, subCause: null })}
            />
            <Select
              label={t('plan.subCause')}
              clearable
              disabled={form.values.cause === null}
              data={(form.values.cause ? causeTaxonomy[form.values.cause].subCauses : []).map((value) => ({
                value,
                label: (terms.subCause as Record<string, string>)[value] ?? value,
              }))}
              {...form.getInputProps('subCause')}
            />
          </Group>
          <Group grow align="flex-start">
            {row('housings', 'housingId')}
            {row('terminals', 'terminalId')}
          </Group>
          <Group grow align="flex-start">
            {row('tools', 'toolId')}
            {row('lines', 'lineId')}
          </Group>
          <Group grow align="flex-start">
            {row('customers', 'customerId')}
            <MultiSelect
              label={t('plan.sources')}
              data={sources.map((value) => ({ value, label: terms.source[value] }))}
              value={form.values.sources}
              onChange={(chosen) => form.setFieldValue('sources', chosen as (typeof sources)[number][])}
            />
          </Group>
          <Group grow align="flex-start">
            <TextInput type="date" label={t('plan.from')} required {...form.getInputProps('from')} />
            <TextInput type="date" label={t('plan.to')} required {...form.getInputProps('to')} />
          </Group>
          <Group grow align="flex-start">
            <TextInput type="date" label={t('plan.cleanPoint')} required {...form.getInputProps('cleanPoint')} />
            <NumberInput
              label={t('plan.reduction')}
              suffix=" %"
              min={1}
              max={100}
              required
              {...form.getInputProps('reduction')}
            />
          </Group>
          <Switch
            label={t('plan.reopen')}
            description={t('plan.reopenHelp')}
            {...form.getInputProps('reopen', { type: 'checkbox' })}
          />
          <div aria-live="polite" aria-busy={preview.isFetching}>
            {!stated.success && <p>{t('plan.incomplete')}</p>}
            {stated.success && preview.isError && <ProblemNote error={preview.error} />}
            {stated.success && preview.data && (
              <ProofText proof={preview.data} plan={stated.data} plantId={action.plantId} />
            )}
          </div>
          {save.isError && <ProblemNote error={save.error} />}
          <Group justify="flex-end">
            <Button type="submit" disabled={!stated.success} loading={save.isPending}>
              {t('plan.keep')}
            </Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
};
