import { Title } from '@mantine/core';
import { useMatch } from '@tanstack/react-router';
import { type ReactNode, useEffect, useRef } from 'react';
import classes from './page-head.module.css';

let shownPath: string | undefined;

/**
 * The page's heading. Names the browser tab, and takes the focus when the person has come from another
 * page, so that keyboard and screen reader start at the top of the new one.
 */
export const PageHead = ({ title, children, aside }: { title: string; children?: ReactNode; aside?: ReactNode }) => {
  const heading = useRef<HTMLHeadingElement>(null);
  // The page's own path: the location already names the next page while this one is still shown.
  const pathname = useMatch({ strict: false, select: (match) => match.pathname });

  useEffect(() => {
    document.title = `${title} · Escape Ledger`;
  }, [title]);

  useEffect(() => {
    if (shownPath !== undefined && shownPath !== pathname) heading.current?.focus({ preventScroll: true });
    shownPath = pathname;
  }, [pathname]);

  return (
    <header className={classes.head}>
      <div>
        <Title order={1} ref={heading} tabIndex={-1} className={classes.title}>
          {title}
        </Title>
        {children && <p className={classes.lead}>{children}</p>}
      </div>
      {aside && <div className={classes.aside}>{aside}</div>}
    </header>
  );
};
