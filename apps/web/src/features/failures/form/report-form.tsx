import { Button, Group, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import type { ReactNode } from 'react';
import { useTranslation } from 'react-i18next';
import { ReportInput } from '#contracts/failures.ts';
import { checkedBy, refusedFields } from '#web/ui/form.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { FindingFields } from './finding-fields.tsx';
import { PartFields } from './part-fields.tsx';
import { PlaceFields } from './place-fields.tsx';
import { TraceFields } from './trace-fields.tsx';

interface Props {
  initial: ReportInput;
  /** The plant of a report never changes. */
  plantFixed?: boolean;
  submit: string;
  onSubmit: (report: ReportInput) => Promise<unknown>;
  pending: boolean;
  error: unknown;
  aside?: ReactNode;
}

/** Every field of a report, for the desk; the line has a form of its own. */
export const ReportForm = ({ initial, plantFixed, submit, onSubmit, pending, error, aside }: Props) => {
  const { t } = useTranslation('failures');
  const form = useForm<ReportInput>({ initialValues: initial, validate: checkedBy(ReportInput) });
  const send = (values: ReportInput) =>
    onSubmit(ReportInput.parse(values)).catch((refused: unknown) => form.setErrors(refusedFields(refused)));

  return (
    <form onSubmit={form.onSubmit((values) => void send(values))} noValidate>
      <Stack gap="lg" maw="62rem">
        <PlaceFields form={form} plantFixed={plantFixed === true} />
        <PartFields form={form} />
        <FindingFields form={form} />
        <TraceFields form={form} />
        {error !== null && <ProblemNote error={error} />}
        {Object.keys(form.errors).length > 0 && error === null && <p role="alert">{t('form.correct')}</p>}
        <Group>
          <Button type="submit" loading={pending}>
            {submit}
          </Button>
          {aside}
        </Group>
      </Stack>
    </form>
  );
};
