import { useTranslation } from 'react-i18next';
import { type Answer, answers } from '#contracts/finding-catalogue.ts';
import classes from './panel.module.css';

interface Props {
  /** What is asked, for those who do not see it. */
  label: string;
  given: Answer | null;
  busy: boolean;
  onAnswer: (answer: Answer) => void;
  onTakeBack: () => void;
}

/** Yes, no, could not tell: large enough for a glove. */
export const AnswerButtons = ({ label, given, busy, onAnswer, onTakeBack }: Props) => {
  const { t } = useTranslation('evidence');
  return (
    <fieldset className={classes.answers} style={{ border: 0, margin: 0, padding: 0, marginTop: '0.5rem' }}>
      <legend className="visually-hidden">{t('finding.answerTo', { finding: label })}</legend>
      {answers.map((answer) => (
        <button
          key={answer}
          type="button"
          aria-pressed={given === answer}
          disabled={busy}
          onClick={() => onAnswer(answer)}
        >
          {t(`answer.${answer}`)}
        </button>
      ))}
      {given && (
        <button
          type="button"
          className={classes.back}
          disabled={busy}
          onClick={onTakeBack}
          aria-label={t('finding.takeBackOf', { finding: label })}
        >
          {t('finding.takeBack')}
        </button>
      )}
    </fieldset>
  );
};
