import { Title } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { caseParts, type Discipline, partNames } from '#contracts/case-parts.ts';
import type { Case } from '#contracts/cases.ts';
import { ActionsPanel } from '#web/features/actions/actions-panel.tsx';
import classes from './cases.module.css';
import { type FormName, PartForm } from './part-form.tsx';
import { ReadAcrossAnswers } from './read-across-answers.tsx';
import { SignBar } from './sign-bar.tsx';
import { Talk } from './talk.tsx';
import { useCaseTerms } from './use-case-terms.ts';

const kinds = { 3: 'containment', 6: 'corrective', 7: 'preventive' } as const;

interface Props {
  it: Case;
  discipline: Discipline;
  mayWrite: boolean;
  refresh: () => Promise<Case>;
}

/** A discipline: its parts, its actions, what it lacks, its signatures, its comments and files. */
export const DisciplineView = ({ it, discipline, mayWrite, refresh }: Props) => {
  const { t } = useTranslation('cases');
  const terms = useCaseTerms();
  const open = mayWrite && it.state === 'open' && !it.disciplines[discipline]!.locked;
  const names = partNames.filter((name) => caseParts[name].discipline === discipline) as FormName[];
  const kind = discipline in kinds ? kinds[discipline as keyof typeof kinds] : null;
  return (
    <section className={classes.discipline} aria-label={`D${discipline} ${terms.discipline[discipline]}`}>
      <Title order={2}>
        D{discipline} {terms.discipline[discipline]}
      </Title>
      <p className={classes.help}>{t(`help.${discipline}`)}</p>
      <SignBar it={it} discipline={discipline} />
      {names.map((name) => (
        <PartForm key={name} of={it} name={name} open={open} refresh={refresh} />
      ))}
      {kind && <ActionsPanel plantId={it.plantId} origin={{ caseId: it.id }} kind={kind} />}
      {discipline === 7 && <ReadAcrossAnswers it={it} />}
      <Talk it={it} discipline={discipline} open={open} mayWrite={mayWrite && it.state !== 'dropped'} />
    </section>
  );
};
