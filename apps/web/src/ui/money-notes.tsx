import { List } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import { useFormat } from './language.ts';

interface Head {
  currency: string;
  rates: readonly { base: string; quote: string; rate: string; rateOn: string }[];
  withoutRate: readonly string[];
}

/** By which dated rates the money was converted, and which could not be. */
export const MoneyNotes = ({ head }: { head: Head }) => {
  const { t } = useTranslation('ui');
  const format = useFormat();
  if (head.rates.length === 0 && head.withoutRate.length === 0) return null;
  return (
    <List size="sm" c="var(--ink-quiet)" my="md">
      {head.rates.map(({ base, quote, rate, rateOn }) => (
        <List.Item key={`${base}${quote}${rateOn}`}>
          {t('money.rate', {
            base,
            quote,
            rate: format.number(Number(rate), { maximumSignificantDigits: 6 }),
            day: format.day(rateOn),
          })}
        </List.Item>
      ))}
      {head.withoutRate.length > 0 && (
        <List.Item>
          {t('money.withoutRate', { currencies: format.list(head.withoutRate), currency: head.currency })}
        </List.Item>
      )}
    </List>
  );
};
