/** The review from top to bottom, in the order of the meeting. */
import type { Review } from '#contracts/review.ts';
import { Costliest } from '#web/features/week/costliest.tsx';
import { Headlines } from '#web/features/week/headlines.tsx';
import { TaskList } from '#web/features/week/task-list.tsx';
import { TopCauses } from '#web/features/week/top-causes.tsx';
import { Cautions } from '#web/ui/cautions.tsx';
import { useFormat } from '#web/ui/language.ts';
import { MoneyNotes } from '#web/ui/money-notes.tsx';
import { Complaints } from './complaints.tsx';
import { DecisionForm } from './decision-form.tsx';
import { Gates, SlippedThrough } from './escapes.tsx';
import { Decisions, Effects, Overdue, Promises } from './follow-up.tsx';
import { Prevention } from './prevention.tsx';
import classes from './review.module.css';
import { Section } from './section.tsx';
import { SignalList } from './signal-list.tsx';
import { useReviewWords } from './use-words.ts';

export const ReviewView = ({ review }: { review: Review }) => {
  const words = useReviewWords();
  const format = useFormat();
  const { content } = review;
  const { escapes, complaints, actions, effects, waiting, gaps } = content;
  const open = waiting.filter(({ count }) => count > 0);
  const lacking = gaps.filter(({ count }) => count > 0);
  const isSafety = open.some(({ kind }) => kind === 'safety_unsorted') || complaints.safetyUnseen > 0;
  const judged = effects.held + effects.notShownYet + effects.didNotHold;

  return (
    <>
      {isSafety && <Cautions about={['safety']} />}
      <div className={classes.parts}>
        <Section part="promises" wide empty={content.promises.length === 0}>
          <Promises rows={content.promises} />
        </Section>
        <Section part="signals" wide>
          <SignalList signals={content.signals} />
        </Section>
        <Section part="figures" wide>
          <Headlines week={content} />
        </Section>
        <Section part="causes" wide empty={content.causes.length === 0}>
          <TopCauses week={{ topCauses: content.causes, currency: content.currency }} />
        </Section>
        <Section part="costliest" wide empty={content.costliest.length === 0}>
          <Costliest rows={content.costliest} />
        </Section>
        <Section part="escapes" empty={escapes.known === 0}>
          <SlippedThrough escapes={escapes} />
        </Section>
        <Section part="gates" empty={escapes.gates.length === 0}>
          <Gates escapes={escapes} />
        </Section>
        <Section part="prevention" wide empty={content.prevention.length === 0}>
          <Prevention rows={content.prevention} />
        </Section>
        <Section part="complaints" wide empty={complaints.open === 0}>
          <Complaints content={content} />
        </Section>
        <Section part="actions">
          <p>
            {words.said.actions(
              format.count(actions.open),
              format.count(actions.overdue),
              format.count(actions.reopened),
            )}
          </p>
          {actions.list.length > 0 ? <Overdue actions={actions} /> : <p>{words.nothing.actions}</p>}
        </Section>
        <Section part="effects" empty={judged === 0}>
          <p>
            {words.said.effects(
              format.count(effects.held),
              format.count(effects.notShownYet),
              format.count(effects.didNotHold),
            )}
          </p>
          {effects.list.length > 0 && <Effects effects={effects} />}
        </Section>
        <Section part="gaps" wide>
          <div className={classes.halves}>
            <TaskList
              nothing={words.nothing.gaps}
              tasks={lacking.map(({ kind, count, of, link }) => ({
                key: kind,
                count: format.count(count),
                text: words.gap[kind],
                note: words.said.of(format.count(count), format.count(of)),
                link,
              }))}
            />
            {open.length > 0 && (
              <div>
                <h3>{words.said.waiting}</h3>
                <TaskList
                  nothing=""
                  tasks={open.map(({ kind, count, link }) => ({
                    key: kind,
                    count: format.count(count),
                    text: words.waiting[kind],
                    link,
                    urgent: kind === 'safety_unsorted' || kind === 'outside_unsorted',
                  }))}
                />
              </div>
            )}
          </div>
        </Section>
        <Section part="decisions" wide>
          {content.decisions.length > 0 ? <Decisions rows={content.decisions} /> : <p>{words.nothing.decisions}</p>}
          {review.state === 'open' && review.mayWrite && <DecisionForm review={review} />}
        </Section>
      </div>
      <MoneyNotes head={content} />
    </>
  );
};
