import { Paper, Title } from '@mantine/core';
import type { ReactNode } from 'react';
import { useEffect } from 'react';
import icon from '#web/app/icon.svg';
import classes from './door.module.css';
import { LanguageSwitch } from './language-switch.tsx';

/** The page in front of the ledger: one small form and the language. */
export const Door = ({ title, children }: { title: string; children: ReactNode }) => {
  useEffect(() => {
    document.title = `${title} · Escape Ledger`;
  }, [title]);
  return (
    <main className={classes.door}>
      <div className={classes.sign}>
        <img src={icon} alt="" width={40} height={40} />
        <span>Escape Ledger</span>
      </div>
      <Paper withBorder p="xl" className={classes.card}>
        <Title order={1} mb="md">
          {title}
        </Title>
        {children}
      </Paper>
      <LanguageSwitch />
    </main>
  );
};
