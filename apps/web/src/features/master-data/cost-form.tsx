import { Button, Group, Stack, Text, TextInput } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { type Plant, type StandardCost, saveStandardCosts } from '#contracts/master-data.ts';
import { Day } from '#contracts/shared/scalars.ts';
import { dispositions, stages } from '#contracts/taxonomy.ts';
import { call, ProblemError } from '#web/ui/http.ts';
import { useTerms } from '#web/ui/language.ts';
import { MoneyField } from '#web/ui/money-field.tsx';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './master-data.module.css';
import { useForgetMasterData } from './queries.ts';
import { type CostKey, changedCells, inEffect } from './standard-costs.ts';

interface Props {
  plant: Plant;
  rows: readonly StandardCost[];
  firstDay: string;
  onDone: () => void;
}

/** The whole table as inputs, filled with what holds on the chosen day; only what was changed is sent. */
export const CostForm = ({ plant, rows, firstDay, onDone }: Props) => {
  const { t } = useTranslation('master-data');
  const terms = useTerms();
  const forget = useForgetMasterData();
  const [day, setDay] = useState(firstDay);
  const [typed, setTyped] = useState<ReadonlyMap<CostKey, number | undefined>>(new Map());
  const held = inEffect(rows, day);
  const cells = changedCells(rows, day, typed);
  const save = useMutation({
    mutationFn: () => call(saveStandardCosts, { body: { plantId: plant.id, validFrom: day, cells } }),
    onSuccess: async ({ items }) => {
      notifications.show({ withCloseButton: false, message: t('costs.saved', { count: items.length }) });
      onDone();
      await forget();
    },
  });
  const lost = save.error instanceof ProblemError && save.error.problem.code === 'changed_meanwhile';
  const reload = async () => {
    await forget();
    save.reset();
  };
  const dayError = Day.safeParse(day).success ? null : t('error.missing');

  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        save.mutate();
      }}
    >
      <Stack>
        <TextInput
          type="date"
          label={t('costs.from')}
          description={t('costs.fromHelp')}
          value={day}
          onChange={(event) => setDay(event.currentTarget.value)}
          error={dayError}
          required
          maw="20rem"
        />
        <div className={classes.grid}>
          <table>
            <caption className="visually-hidden">{t('costs.formCaption', { plant: plant.name })}</caption>
            <thead>
              <tr>
                <th scope="col">
                  <span className="visually-hidden">{t('field.stage')}</span>
                </th>
                {dispositions.map((disposition) => (
                  <th key={disposition} scope="col">
                    {terms.disposition[disposition]}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {stages.map((stage) => (
                <tr key={stage}>
                  <th scope="row">{terms.stage[stage]}</th>
                  {dispositions.map((disposition) => {
                    const key: CostKey = `${stage} ${disposition}`;
                    const value = typed.has(key) ? typed.get(key) : held.get(key)?.terminalMinor;
                    return (
                      <td key={disposition} data-label={terms.disposition[disposition]}>
                        <MoneyField
                          aria-label={t('costs.cell', {
                            stage: terms.stage[stage],
                            disposition: terms.disposition[disposition],
                          })}
                          currency={plant.currency}
                          min={0}
                          value={value}
                          onChange={(minor) => setTyped(new Map(typed).set(key, minor))}
                        />
                      </td>
                    );
                  })}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        {save.isError && <ProblemNote error={save.error} />}
        <Group>
          <Button type="submit" loading={save.isPending} disabled={cells.length === 0 || dayError !== null || lost}>
            {t('costs.save', { count: cells.length })}
          </Button>
          {lost && (
            <Button variant="default" onClick={() => void reload()}>
              {t('loadPresent')}
            </Button>
          )}
          <Button variant="subtle" onClick={onDone}>
            {t('cancel')}
          </Button>
        </Group>
        <Text size="sm">{t('costs.estimate')}</Text>
      </Stack>
    </form>
  );
};
