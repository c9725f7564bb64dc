import { Alert, Radio, Stack } from '@mantine/core';
import { IconHelpCircle } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import type { Import, Mapping, Question } from '#contracts/imports.ts';
import { useFormat } from '#web/ui/language.ts';
import { useImportTerms } from './queries.ts';

interface Props {
  questions: Import['questions'];
  mapping: Mapping;
  onChange: (mapping: Mapping) => void;
}

/** What the values of the file leave open: asked, never guessed. */
export const Questions = ({ questions, mapping, onChange }: Props) => {
  const { t } = useTranslation('imports');
  const answer = (question: Question, choice: string) =>
    onChange(
      question.about === 'sameKey'
        ? { ...mapping, sameKey: choice as Mapping['sameKey'] }
        : { ...mapping, [question.about]: { ...mapping[question.about], [question.field]: choice } },
    );
  return (
    <Alert color="petrol" variant="outline" icon={<IconHelpCircle aria-hidden />} title={t('asked')}>
      <Stack mt="xs">
        {questions.map((question) => (
          <QuestionField
            key={`${question.about} ${'field' in question ? question.field : ''}`}
            question={question}
            value={(question.about === 'sameKey' ? mapping.sameKey : mapping[question.about][question.field]) ?? null}
            onChange={(choice) => answer(question, choice)}
          />
        ))}
      </Stack>
    </Alert>
  );
};

const QuestionField = ({
  question,
  value,
  onChange,
}: {
  question: Question;
  value: string | null;
  onChange: (choice: string) => void;
}) => {
  const { t } = useTranslation('imports');
  const terms = useImportTerms();
  const format = useFormat();
  const label =
    question.about === 'sameKey'
      ? t('ask.sameKey', { rows: format.count(question.rows) })
      : t(`ask.${question.about}`, { field: terms.field[question.field], example: question.example ?? '' });
  return (
    <Radio.Group label={label} value={value} onChange={onChange}>
      <Stack gap="xs" mt="xs">
        {question.choices.map((choice) => (
          <Radio key={choice} value={choice} label={t(`choice.${choice}`)} />
        ))}
      </Stack>
    </Radio.Group>
  );
};
