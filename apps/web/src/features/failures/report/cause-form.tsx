import { Button, Group, Select, Stack, Textarea } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useTranslation } from 'react-i18next';
import type { z } from 'zod';
import { type Report, Sorting, sortReport } from '#contracts/failures.ts';
import { type Cause, causes, causeTaxonomy, stageNumber, stages } from '#contracts/taxonomy.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { useTerms } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useReportWrite } from '../queries.ts';

type Draft = { [Name in keyof z.output<typeof Sorting>]: string };

const blankToNull = (draft: Draft) =>
  Sorting.parse(Object.fromEntries(Object.entries(draft).map(([name, value]) => [name, value || null])));

/** A person sorts the report into a cause, with what proves it. */
export const CauseForm = ({ report, onDone }: { report: Report; onDone: () => void }) => {
  const { t } = useTranslation('failures');
  const terms = useTerms();
  const form = useForm<Draft>({
    initialValues: {
      cause: report.cause ?? '',
      subCause: report.subCause ?? '',
      origin: report.origin ?? '',
      proof: report.proof ?? '',
      reason: '',
    },
    validate: { cause: (cause) => (cause === '' ? t('cause.choose') : null) },
  });
  const save = useReportWrite((draft: Draft) =>
    call(sortReport, { params: { id: report.id }, body: blankToNull(draft), version: report.version }),
  );
  const cause = form.values.cause as Cause | '';
  const origins = stages.filter((stage) => stageNumber(stage) <= stageNumber(report.found));
  const setCause = (value: string | null) => {
    const usual = value ? causeTaxonomy[value as Cause].usualOrigin : null;
    const origin = usual && origins.includes(usual) ? usual : '';
    form.setValues({ cause: value ?? '', subCause: '', origin });
  };
  const submit = (draft: Draft) =>
    void save.mutateAsync(draft).then(onDone, (error: unknown) => form.setErrors(refusedFields(error)));

  return (
    <form onSubmit={form.onSubmit(submit)}>
      <Stack gap="sm">
        <Select
          label={t('cause.cause')}
          required
          data={causes.map((word) => ({ value: word, label: terms.cause[word] }))}
          value={cause || null}
          onChange={setCause}
          error={form.errors.cause}
          allowDeselect={false}
        />
        {cause && causeTaxonomy[cause].subCauses.length > 0 && (
          <Select
            label={t('cause.subCause')}
            clearable
            data={causeTaxonomy[cause].subCauses.map((word) => ({ value: word, label: terms.subCause[word] ?? word }))}
            {...form.getInputProps('subCause')}
            onChange={(value) => form.setFieldValue('subCause', value ?? '')}
          />
        )}
        <Select
          label={t('cause.origin')}
          description={t('cause.originHelp')}
          clearable
          data={origins.map((stage) => ({ value: stage, label: terms.stage[stage] }))}
          {...form.getInputProps('origin')}
          onChange={(value) => form.setFieldValue('origin', value ?? '')}
        />
        <Textarea
          label={t('cause.proof')}
          description={cause ? t('cause.usualProof', { proof: t(`usualProof.${cause}`) }) : undefined}
          autosize
          minRows={2}
          maxLength={10_000}
          {...form.getInputProps('proof')}
        />
        {report.cause !== null && (
          <Textarea label={t('cause.reason')} autosize maxLength={10_000} {...form.getInputProps('reason')} />
        )}
        {cause === 'adhesive' && <Cautions about={['adhesive']} />}
        {save.error && <ProblemNote error={save.error} />}
        <Group>
          <Button type="submit" loading={save.isPending}>
            {t('cause.save')}
          </Button>
          <Button variant="default" onClick={onDone}>
            {t('form.cancel')}
          </Button>
        </Group>
      </Stack>
    </form>
  );
};
