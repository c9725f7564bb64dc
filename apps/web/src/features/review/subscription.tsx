import { Checkbox, Stack } from '@mantine/core';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { changeSubscriptions, type Subscriptions } from '#contracts/review.ts';
import { call } from '#web/ui/http.ts';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import { usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { subscriptionsQuery } from './queries.ts';
import classes from './review.module.css';

/** Which reviews one is sent; a tick is kept at once. */
export const Subscription = () => {
  const { t } = useTranslation('review');
  const plants = usePlants();
  const mayGroup = usePerson().permissions['reviews.read'] === 'all' && plants.length > 1;
  const queries = useQueryClient();
  const query = useQuery(subscriptionsQuery);
  const save = useMutation({
    mutationFn: (body: Subscriptions) => call(changeSubscriptions, { body }),
    onSuccess: (kept) => queries.setQueryData(subscriptionsQuery.queryKey, kept),
  });
  return (
    <section className={`${classes.part} no-print`}>
      <h2>{t('mail.title')}</h2>
      <p className={classes.about}>{t('mail.about')}</p>
      <QueryBoundary query={query} height={4}>
        {(kept) => {
          const chosen = save.isPending ? save.variables : kept;
          return (
            <Stack gap="xs">
              {mayGroup && (
                <Checkbox
                  label={t('mail.group')}
                  checked={chosen.group}
                  onChange={(event) => save.mutate({ ...chosen, group: event.currentTarget.checked })}
                />
              )}
              {plants.map((plant) => (
                <Checkbox
                  key={plant.id}
                  label={rowText(plant)}
                  checked={chosen.plants.includes(plant.id)}
                  onChange={(event) => {
                    const rest = chosen.plants.filter((id) => id !== plant.id);
                    save.mutate({ ...chosen, plants: event.currentTarget.checked ? [...rest, plant.id] : rest });
                  }}
                />
              ))}
            </Stack>
          );
        }}
      </QueryBoundary>
      {save.error && <ProblemNote error={save.error} />}
    </section>
  );
};
