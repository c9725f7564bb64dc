import type { ReactNode } from 'react';
import classes from './plain-words.module.css';

/** Below a figure: what it means in plain words, and when not to trust it. */
export const PlainWords = ({ children }: { children: ReactNode }) => <p className={classes.words}>{children}</p>;
