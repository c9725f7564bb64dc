import type { ReactNode } from 'react';
import type { FindingCode } from '#contracts/finding-catalogue.ts';
import { CavitySketch } from './cavity.tsx';
import { LockSketch } from './lock.tsx';
import {
  AfterTestSketch,
  BoxSketch,
  FaceSketch,
  FixtureSketch,
  LotSketch,
  ReworkSketch,
  SeveralSketch,
  ToolSketch,
} from './pattern.tsx';
import { TerminalSketch } from './terminal.tsx';
import { WireSketch } from './wire.tsx';

/** What is drawn for each finding: always the state that a "yes" describes. */
export const sketches: Record<FindingCode, ReactNode> = {
  lance_flat: <TerminalSketch lance="flat" ringLance />,
  lance_intact: <TerminalSketch lance="up" ringLance />,
  lance_low: <TerminalSketch lance="low" />,
  terminal_bent: <TerminalSketch bent />,
  terminal_stretched: <TerminalSketch stretched />,
  same_deformation: <SeveralSketch alike />,
  mixed_deformation: <SeveralSketch alike={false} />,
  carrier_tab_long: <TerminalSketch tab />,
  crimp_height_out: <TerminalSketch crimpSize />,
  wire_out_of_range: <TerminalSketch thickWire />,
  witness_mark: <TerminalSketch witness />,
  reseats_and_holds: <CavitySketch back={16} pushPull />,
  depth_short: <CavitySketch back={18} depth />,
  insulation_blocks: <CavitySketch back={14} blocked />,
  probe_mark: <TerminalSketch probe />,
  contact_opened: <TerminalSketch opened />,
  residue: <TerminalSketch residue />,
  no_float: <CavitySketch float />,
  reworked_before: <ReworkSketch />,
  latch_whitened: <CavitySketch latch="white" />,
  latch_broken: <CavitySketch latch="broken" />,
  orientation_sheared: <CavitySketch sheared />,
  removal_marks: <CavitySketch scratches />,
  wrong_circuit: <WireSketch kind="swapped" />,
  short_moulded: <CavitySketch latch="short" />,
  flash_in_cavity: <CavitySketch flash />,
  dimension_out: <CavitySketch measured />,
  sharp_exit: <WireSketch kind="angle" />,
  tie_near: <WireSketch kind="tie" />,
  side_load: <WireSketch kind="side" />,
  wire_short: <WireSketch kind="short" />,
  holds_when_freed: <WireSketch kind="freed" />,
  lock_open: <LockSketch state="open" />,
  lock_would_not_close: <LockSketch state="stuck" />,
  no_lock_called_for: <LockSketch state="missing" />,
  same_tool_lately: <ToolSketch text="14 d" />,
  tool_overdue: <ToolSketch text="> 100 %" />,
  same_fixture_position: <FixtureSketch />,
  same_lot_elsewhere: <LotSketch />,
  outer_row: <FaceSketch />,
  after_test: <AfterTestSketch />,
  same_box_mixed_tools: <BoxSketch />,
  force_below_minimum: <CavitySketch gauge />,
  load_above_rating: <WireSketch kind="load" />,
};
