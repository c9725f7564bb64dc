import { Button, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { ActionOf } from '#contracts/actions.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import classes from '../actions.module.css';
import { isChangeable } from '../changeable.ts';
import { effectQuery } from '../queries.ts';
import { EffectView } from './effect-view.tsx';
import { PlanForm } from './plan-form.tsx';

/** What would count as proof that the action held, and what the data say. */
export const EffectSection = ({ action, mayWrite }: { action: ActionOf; mayWrite: boolean }) => {
  const { t } = useTranslation('actions');
  const query = useQuery(effectQuery(action.id));
  const [planning, setPlanning] = useState(false);
  const mayPlan = mayWrite && isChangeable(action);
  return (
    <section className={classes.section} aria-label={t('effect.title')}>
      <Title order={2} mb="sm">
        {t('effect.title')}
      </Title>
      <QueryBoundary query={query} height={16}>
        {(effect) => (
          <>
            {effect ? <EffectView effect={effect} plantId={action.plantId} /> : <p>{t('effect.none')}</p>}
            {mayPlan && (
              <Button variant="default" className="no-print" onClick={() => setPlanning(true)}>
                {t(effect ? 'effect.restate' : 'effect.state')}
              </Button>
            )}
            {planning && <PlanForm action={action} plan={effect?.plan ?? null} onDone={() => setPlanning(false)} />}
          </>
        )}
      </QueryBoundary>
    </section>
  );
};
