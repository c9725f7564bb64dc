import { Text } from '@mantine/core';
import type { ReactNode } from 'react';
import { useTranslation } from 'react-i18next';
import classes from './empty-note.module.css';

/** Nothing to show, and what to do about it. */
export const EmptyNote = ({ title, children }: { title?: string; children?: ReactNode }) => {
  const { t } = useTranslation('ui');
  return (
    <div className={classes.empty}>
      <Text fw={600}>{title ?? t('empty.title')}</Text>
      <Text size="sm" component="div">
        {children ?? t('empty.text')}
      </Text>
    </div>
  );
};
