import { Anchor, Button, Divider, Title } from '@mantine/core';
import { IconPencil } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { ActionOf } from '#contracts/actions.ts';
import { useFormat } from '#web/ui/language.ts';
import { PageHead } from '#web/ui/page-head.tsx';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { ActionForm } from './action-form.tsx';
import classes from './actions.module.css';
import { isChangeable } from './changeable.ts';
import { EffectSection } from './effect/effect-section.tsx';
import { EvidenceSection } from './evidence-section.tsx';
import { StateMark } from './marks.tsx';
import { actionQuery } from './queries.ts';
import { actionRoute } from './routes.ts';
import { StateSection } from './state-section.tsx';
import { useActionTerms } from './use-terms.ts';

export const ActionPage = () => {
  const { id } = actionRoute.useParams();
  const query = useQuery(actionQuery(id));
  return (
    <QueryBoundary query={query} height={30}>
      {(action) => <Action action={action} />}
    </QueryBoundary>
  );
};

const Action = ({ action }: { action: ActionOf }) => {
  const { t } = useTranslation('actions');
  const [changing, setChanging] = useState(false);
  const mayWrite = useMay('actions.write', action.plantId);
  return (
    <>
      <PageHead
        title={`${action.number} ${action.title}`}
        aside={
          mayWrite &&
          isChangeable(action) && (
            <Button
              variant="default"
              leftSection={<IconPencil size={18} aria-hidden />}
              onClick={() => setChanging(true)}
            >
              {t('form.change')}
            </Button>
          )
        }
      >
        <StateMark action={action} />
      </PageHead>
      <Facts action={action} />
      {action.description && <p className={classes.description}>{action.description}</p>}
      <StateSection action={action} mayWrite={mayWrite} />
      <EvidenceSection action={action} mayWrite={mayWrite} />
      {action.kind !== 'containment' && <EffectSection action={action} mayWrite={mayWrite} />}
      <Divider my="lg" />
      <Steps action={action} />
      {changing && <ActionForm action={action} onDone={() => setChanging(false)} />}
    </>
  );
};

const Facts = ({ action }: { action: ActionOf }) => {
  const { t } = useTranslation('actions');
  const { field, kind } = useActionTerms();
  const format = useFormat();
  const facts: [string, React.ReactNode][] = [
    [field.owner, action.owner],
    [field.dueOn, format.day(action.dueOn)],
    [field.plant, action.plantCode],
    [field.kind, kind[action.kind]],
    [field.openedOn, t('openedBy', { day: format.day(action.openedOn), name: action.openedBy })],
    [field.daysOpen, format.count(action.daysOpen)],
    ...(action.effortHours === null
      ? []
      : ([[t('form.effort'), format.number(action.effortHours)]] as [string, string][])),
    ...(action.cost ? ([[t('form.cost'), format.money(action.cost)]] as [string, string][]) : []),
    ...(action.prevention
      ? ([[t('form.prevention'), t(`prevention.${action.prevention}`)]] as [string, string][])
      : []),
    ...(action.carriedOutOn ? ([[t('carriedOutOn'), format.day(action.carriedOutOn)]] as [string, string][]) : []),
    ...(action.verifiedOn && action.verifiedBy
      ? ([
          [t('verifiedBy'), t('openedBy', { day: format.day(action.verifiedOn), name: action.verifiedBy })],
          [t('verification'), action.verification],
        ] as [string, React.ReactNode][])
      : []),
    ...origins(action).map(
      ([name, to]) =>
        [
          t('origin'),
          <Anchor key={name} inherit renderRoot={(props) => <Link {...props} to={to as '/'} />}>
            {t(`origins.${name}`)}
          </Anchor>,
        ] as [string, React.ReactNode],
    ),
  ];
  return (
    <dl className={classes.facts}>
      {facts.map(([name, value], place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a fact has no identity but its place
        <div key={place}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
};

const origins = (action: ActionOf) =>
  (
    [
      ['complaint', action.complaintId && `/complaints/${action.complaintId}`],
      ['containment', action.containmentId && `/containment/${action.containmentId}`],
      ['case', action.caseId && `/cases/${action.caseId}`],
      ['review', action.reviewId && `/reviews/${action.reviewId}`],
    ] as const
  ).filter((origin): origin is [(typeof origin)[0], string] => Boolean(origin[1]));

const Steps = ({ action }: { action: ActionOf }) => {
  const { t } = useTranslation('actions');
  const terms = useActionTerms();
  const format = useFormat();
  return (
    <section aria-label={t('steps')}>
      <Title order={2} mb="sm">
        {t('steps')}
      </Title>
      <ol className={classes.steps}>
        {action.steps.map((step) => (
          <li key={`${step.at} ${step.state}`}>
            <strong>{terms.state[step.state]}</strong> – {step.actor}, {format.instant(step.at)}
            {step.reason && <div>{step.reason}</div>}
          </li>
        ))}
      </ol>
    </section>
  );
};
