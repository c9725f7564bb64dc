import { Anchor, List } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { PreventionOption, WhatIfInput } from '#contracts/what-if.ts';
import { actionRoute } from '#web/features/actions/routes.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { namesOf } from './outcomes.ts';

/** Every input of a kept scenario, in words. */
export const InputsTable = ({ input, currency }: { input: WhatIfInput; currency: string }) => {
  const { t } = useTranslation('what-if');
  const format = useFormat();
  const terms = useTerms();
  const money = (amountMinor: number) => format.money({ amountMinor, currency });
  const share = (value: number) => format.number(value, { style: 'percent', maximumFractionDigits: 2 });
  const columns: Column<PreventionOption>[] = [
    { id: 'name', header: t('option.name'), rowHeader: true, phone: 'title', cell: ({ name }) => name },
    { id: 'kind', header: t('option.kind'), cell: ({ kind }) => t(`kind.${kind}`) },
    { id: 'once', header: t('option.once'), align: 'end', cell: ({ onceMinor }) => money(onceMinor) },
    { id: 'yearly', header: t('option.yearly'), align: 'end', cell: ({ yearlyMinor }) => money(yearlyMinor) },
    {
      id: 'effects',
      header: t('effect.title'),
      cell: ({ effects }) => (
        <List size="sm" listStyleType="none">
          {effects.map(({ cause, low, likely, high, actionId }) => (
            <List.Item key={cause}>
              {t('effect.said', {
                cause: terms.cause[cause],
                low: share(low),
                likely: share(likely),
                high: share(high),
              })}{' '}
              {actionId === null ? (
                t('effect.entered')
              ) : (
                <Anchor
                  inherit
                  renderRoot={(props) => <Link {...props} to={actionRoute.to} params={{ id: actionId }} />}
                >
                  {t('effect.judged')}
                </Anchor>
              )}
            </List.Item>
          ))}
        </List>
      ),
    },
    {
      id: 'chosen',
      header: t('option.chosen'),
      cell: ({ key, excludes }) => (
        <>
          {input.together.includes(key) ? t('costs.yes') : t('costs.no')}
          {excludes.length > 0 && `; ${t('option.notWith', { others: format.list(namesOf(excludes, input)) })}`}
        </>
      ),
    },
  ];
  return (
    <>
      <DataTable caption={t('inputs')} hideCaption columns={columns} rows={input.options} rowKey={({ key }) => key} />
      <List size="sm" mb="lg">
        <List.Item>
          {t('said.horizon', { count: input.horizonYears, years: format.number(input.horizonYears) })}
        </List.Item>
        <List.Item>
          {input.budgetMinor === null ? t('said.noBudget') : t('said.budget', { budget: money(input.budgetMinor) })}
        </List.Item>
        <List.Item>{t(`said.money.${input.money}`)}</List.Item>
        <List.Item>{t('said.seed', { seed: input.seed })}</List.Item>
      </List>
    </>
  );
};
