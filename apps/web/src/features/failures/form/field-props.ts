/** Ties the form library's fields to values that are null while empty. */
import type { UseFormReturnType } from '@mantine/form';
import type { ChangeEvent } from 'react';
import type { ReportInput } from '#contracts/failures.ts';

export type ReportFormApi = UseFormReturnType<ReportInput>;
type NamesOf<Value> = {
  [Name in keyof ReportInput]: ReportInput[Name] extends Value ? Name : never;
}[keyof ReportInput];

export const textProps = (form: ReportFormApi, name: NamesOf<string | null>) => ({
  value: form.values[name] ?? '',
  onChange: (event: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) =>
    form.setFieldValue(name, (event.currentTarget.value || null) as never),
  error: form.errors[name],
});

export const numberProps = (form: ReportFormApi, name: NamesOf<number | null>) => ({
  value: form.values[name] ?? '',
  onChange: (value: string | number) => form.setFieldValue(name, (value === '' ? null : Number(value)) as never),
  error: form.errors[name],
});

export const rowProps = (form: ReportFormApi, name: NamesOf<string | null>) => ({
  value: form.values[name],
  onChange: (id: string | null) => form.setFieldValue(name, id as never),
  error: form.errors[name],
});
