import { Fieldset, Group, NumberInput, Select, Text } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { type ReplyTimes, replies, timeUnits } from '#contracts/reply-times.ts';
import { useLabels } from '../use-labels.ts';

interface Props {
  value: ReplyTimes;
  onChange: (value: ReplyTimes) => void;
  disabled: boolean;
}

/** How long each reply to a customer may take. */
export const ReplyTimesField = ({ value, onChange, disabled }: Props) => {
  const { t } = useTranslation('master-data');
  const label = useLabels();
  return (
    <Fieldset legend={label('replyTimes')} disabled={disabled}>
      <Text size="sm">{t('reply.help')}</Text>
      {replies.map((reply) => {
        const set = (part: Partial<ReplyTimes[typeof reply]>) =>
          onChange({ ...value, [reply]: { ...value[reply], ...part } });
        return (
          <Group key={reply} align="end" wrap="nowrap" mt="xs">
            <NumberInput
              label={t(`reply.${reply}`)}
              flex={1}
              min={1}
              max={1000}
              allowDecimal={false}
              value={value[reply].amount}
              onChange={(amount) => set({ amount: Number(amount) })}
            />
            <Select
              flex={1}
              aria-label={t('reply.unit', { reply: t(`reply.${reply}`) })}
              data={timeUnits.map((unit) => ({ value: unit, label: t(`reply.${unit}`) }))}
              allowDeselect={false}
              value={value[reply].unit}
              onChange={(unit) => unit && set({ unit })}
            />
          </Group>
        );
      })}
    </Fieldset>
  );
};
