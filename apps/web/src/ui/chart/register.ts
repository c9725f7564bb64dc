/** The parts of Chart.js in use, registered once, and its defaults from our theme. */
import {
  BarController,
  BarElement,
  CategoryScale,
  Chart,
  Legend,
  LinearScale,
  LineController,
  LineElement,
  LogarithmicScale,
  PointElement,
  Tooltip,
} from 'chart.js';
import annotation from 'chartjs-plugin-annotation';
import { ink, theme } from '#web/app/theme.ts';
import { whiskers } from './whiskers.ts';

Chart.register(
  annotation,
  whiskers,
  BarController,
  BarElement,
  CategoryScale,
  Legend,
  LinearScale,
  LineController,
  LineElement,
  LogarithmicScale,
  PointElement,
  Tooltip,
);
Chart.defaults.font.family = theme.fontFamily ?? 'sans-serif';
Chart.defaults.font.size = 13;
Chart.defaults.color = ink.plain;
Chart.defaults.borderColor = ink.rule;
Chart.defaults.maintainAspectRatio = false;
Chart.defaults.animation = false;
