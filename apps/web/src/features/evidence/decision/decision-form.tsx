import { Button, Group, Select, Stack, Textarea } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import { confirmBatch, confirmCause, Decision, type Evidence } from '#contracts/evidence.ts';
import type { Report } from '#contracts/failures.ts';
import { type Cause, causes, causeTaxonomy, stageNumber, stages } from '#contracts/taxonomy.ts';
import { Cautions } from '#web/ui/cautions.tsx';
import { refusedFields } from '#web/ui/form.ts';
import { call } from '#web/ui/http.ts';
import { useTerms } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useForgetDecided } from '../queries.ts';
import { AlikeList } from './alike-list.tsx';

interface Props {
  report: Report;
  evidence: Evidence;
  /** The cause to begin with; null where the person decides otherwise. */
  preset: Cause | null;
  lead: Cause;
  onDone: () => void;
}

const blank = { cause: '', subCause: '', origin: '', proof: '', reason: '' };
type Draft = typeof blank;

const useOrigins = (report: Report) => {
  const possible = stages.filter((stage) => stageNumber(stage) <= stageNumber(report.found));
  const usual = (cause: Cause | '') => {
    const origin = cause ? causeTaxonomy[cause].usualOrigin : null;
    return origin && possible.includes(origin) ? origin : '';
  };
  return { possible, usual };
};

/** Confirms one cause for this report, and for reports alike that are chosen with it. */
export const DecisionForm = ({ report, evidence, preset, lead, onDone }: Props) => {
  const { t } = useTranslation('evidence');
  const terms = useTerms();
  const forget = useForgetDecided();
  const origins = useOrigins(report);
  const [alike, setAlike] = useState<string[]>([]);
  const needsReason = (cause: string) =>
    evidence.suggestion.takenFindings > 0 && cause !== '' && cause !== lead && cause !== 'undetermined';
  const form = useForm<Draft>({
    initialValues: { ...blank, cause: preset ?? '', origin: origins.usual(preset ?? '') },
    validate: {
      cause: (cause) => (cause === '' ? t('decision.choose') : null),
      reason: (reason, { cause }) =>
        needsReason(cause) && reason.trim() === '' ? t('decision.reasonNeeded', { cause: terms.cause[lead] }) : null,
    },
  });
  const save = useMutation({
    mutationFn: async (draft: Draft) => {
      const decision = Decision.parse(
        Object.fromEntries(Object.entries(draft).map(([name, it]) => [name, it || null])),
      );
      if (alike.length === 0)
        await call(confirmCause, { params: { id: report.id }, body: decision, version: report.version });
      else await call(confirmBatch, { body: { ids: [report.id, ...alike], decision }, idempotencyKey: uuidv7() });
      await forget();
    },
    onSuccess: onDone,
    onError: (error) => form.setErrors(refusedFields(error)),
  });
  const cause = form.values.cause as Cause | '';
  const subCauses = cause ? causeTaxonomy[cause].subCauses : [];
  const setCause = (value: string | null) =>
    form.setValues({ cause: value ?? '', subCause: '', origin: origins.usual((value ?? '') as Cause | '') });

  return (
    <form onSubmit={form.onSubmit((draft) => save.mutate(draft))}>
      <Stack gap="sm" mt="xs">
        <Select
          label={t('decision.cause')}
          size="md"
          required
          data={causes.map((word) => ({ value: word, label: terms.cause[word] }))}
          value={cause || null}
          onChange={setCause}
          error={form.errors.cause}
          allowDeselect={false}
        />
        {subCauses.length > 0 && (
          <Select
            label={t('decision.subCause')}
            size="md"
            clearable
            data={subCauses.map((word) => ({ value: word, label: terms.subCause[word] ?? word }))}
            {...form.getInputProps('subCause')}
            onChange={(value) => form.setFieldValue('subCause', value ?? '')}
          />
        )}
        <Select
          label={t('decision.origin')}
          size="md"
          clearable
          data={origins.possible.map((stage) => ({ value: stage, label: terms.stage[stage] }))}
          {...form.getInputProps('origin')}
          onChange={(value) => form.setFieldValue('origin', value ?? '')}
        />
        <Textarea
          label={t('decision.proof')}
          size="md"
          autosize
          minRows={2}
          maxLength={10_000}
          {...form.getInputProps('proof')}
        />
        <Textarea
          label={t('decision.reason')}
          description={needsReason(cause) ? t('decision.reasonNeeded', { cause: terms.cause[lead] }) : undefined}
          required={needsReason(cause)}
          size="md"
          autosize
          maxLength={10_000}
          {...form.getInputProps('reason')}
        />
        {cause === 'adhesive' && <Cautions about={['adhesive']} />}
        <AlikeList reportId={report.id} chosen={alike} onChange={setAlike} />
        {save.error && <ProblemNote error={save.error} />}
        <Group>
          <Button type="submit" size="lg" loading={save.isPending}>
            {alike.length === 0 ? t('decision.save') : t('decision.saveMany', { count: alike.length + 1 })}
          </Button>
          <Button size="lg" variant="default" onClick={onDone}>
            {t('decision.cancel')}
          </Button>
        </Group>
      </Stack>
    </form>
  );
};
