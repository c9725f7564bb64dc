import type { FindingCode } from './finding-catalogue.ts';

/** What a finding is called, and how to look. */
export const findingTerms: Record<FindingCode, { name: string; look: string }> = {
  lance_flat: {
    name: 'Lance flat or missing',
    look: 'Look at the lance from the side. Is it pressed flat against the terminal, or broken off?',
  },
  lance_intact: {
    name: 'Lance intact',
    look: 'Does the lance stand free, straight and springy, as on a new terminal from the reel?',
  },
  lance_low: {
    name: 'Lance lower than drawn',
    look: 'Measure the height of the lance tip over the terminal floor and compare with the drawing.',
  },
  terminal_bent: {
    name: 'Terminal bent or twisted',
    look: 'Lay the terminal on a flat surface. Is it bent, twisted or rolled along its axis?',
  },
  terminal_stretched: {
    name: 'Terminal stretched',
    look: 'Compare the length behind the contact with a new terminal. Is the transition drawn out or necked?',
  },
  same_deformation: {
    name: 'Same deformation on every part',
    look: 'Look at five or more terminals of the same circuit. Do all show the same bend, dent or flat?',
  },
  mixed_deformation: {
    name: 'Deformation differs from part to part',
    look: 'Look at five or more terminals. Are they crushed or bent in mixed directions, without a pattern?',
  },
  carrier_tab_long: {
    name: 'Carrier tab too long',
    look: 'Look at the cut-off at the front or rear. Does a piece of the carrier strip stand out beyond the drawing?',
  },
  crimp_height_out: {
    name: 'Crimp height or width off',
    look: 'Measure conductor crimp height and width with a crimp micrometer. Is either outside its limits?',
  },
  wire_out_of_range: {
    name: 'Wire outside the terminal’s range',
    look: 'Taken from the report: the cross-section of the wire against the range of the terminal.',
  },
  witness_mark: {
    name: 'Mark of a locked position',
    look: 'Is there a rub mark on lance, latch or ledge that shows the terminal was once locked?',
  },
  reseats_and_holds: {
    name: 'Re-seats with a click and holds',
    look: 'Push the terminal home by hand, listen for the click, then pull gently on the wire. Does it hold now?',
  },
  depth_short: {
    name: 'Insertion depth short',
    look: 'Measure from the mating face to the terminal tip. Is it further back than the drawing allows?',
  },
  insulation_blocks: {
    name: 'Insulation or seal blocks the way',
    look: 'Does insulation, a seal or a burr sit where the terminal has to pass to reach its lock?',
  },
  probe_mark: {
    name: 'Probe mark',
    look: 'Look into the contact. Is there a round dent, scratch or bright spot left by a test probe?',
  },
  contact_opened: {
    name: 'Contact opened or pushed',
    look: 'Is the contact spring opened, set, or is the terminal pushed straight back from the mating side?',
  },
  residue: {
    name: 'Residue of glue or coating',
    look: 'Look for glue, hot melt, epoxy or coating on the terminal, the latch or in the cavity. Use ultraviolet light if you have it.',
  },
  no_float: {
    name: 'Terminal does not float',
    look: 'Move the terminal gently in its cavity. Is the small play that it should have missing?',
  },
  reworked_before: {
    name: 'Reworked before',
    look: 'Do traveller, label or traces show that this position was repaired or replaced earlier?',
  },
  latch_whitened: {
    name: 'Latch whitened',
    look: 'Look at the plastic latch against the light. Is its root white from over-stress?',
  },
  latch_broken: { name: 'Latch broken', look: 'Is the plastic latch cracked or missing?' },
  orientation_sheared: {
    name: 'Orientation feature sheared',
    look: 'Are the rib or corner that keep the terminal the right way up scraped or sheared?',
  },
  removal_marks: {
    name: 'Marks of a removal tool',
    look: 'Are there scratches or a pried latch where a removal tool was pushed in?',
  },
  wrong_circuit: {
    name: 'Circuit in the wrong cavity',
    look: 'Compare wire colour and print with the drawing. Is the circuit in another cavity?',
  },
  short_moulded: {
    name: 'Latch moulded short',
    look: 'Compare the latch with that of a good housing. Is it short, rounded or not filled?',
  },
  flash_in_cavity: {
    name: 'Flash in the cavity',
    look: 'Look into the cavity. Is there moulding flash on the ledge or where the terminal slides?',
  },
  dimension_out: {
    name: 'Part dimension out of drawing',
    look: 'Have ledge, latch and cavity measured (the lance has its own finding). Does a dimension report show one out of its tolerance?',
  },
  sharp_exit: {
    name: 'Wire leaves at a sharp angle',
    look: 'Measure the angle between the wire and the cavity axis at the exit, as installed.',
  },
  tie_near: {
    name: 'Tie or clamp too near',
    look: 'Measure from the rear of the housing to the first tie, tape or clamp.',
  },
  side_load: {
    name: 'Wire pulls to one side',
    look: 'As installed: does the wire push the terminal to one side of its cavity?',
  },
  wire_short: {
    name: 'Wire short or taut',
    look: 'As installed: is there no slack in this circuit while its neighbours have some?',
  },
  holds_when_freed: {
    name: 'Holds once the wire is freed',
    look: 'Cut or open the nearest tie and straighten the wire. Does the terminal now stay home?',
  },
  lock_open: {
    name: 'Secondary lock not closed',
    look: 'Taken from the report: the secondary lock was open, forced, missing or would not close.',
  },
  lock_would_not_close: {
    name: 'Secondary lock would not close',
    look: 'Close the secondary lock by hand. Does it stop before its end?',
  },
  no_lock_called_for: {
    name: 'No secondary lock though one is called for',
    look: 'Does the drawing or the application specification call for a secondary lock that this assembly does not have?',
  },
  same_tool_lately: {
    name: 'Same tool within 14 days',
    look: 'Taken from the data: other reports name the same tool within 14 days.',
  },
  tool_overdue: {
    name: 'Tool service overdue',
    look: 'Taken from the data: the tool has run more cycles since its service than its interval allows.',
  },
  same_fixture_position: {
    name: 'Same fixture position again',
    look: 'Taken from the data: other reports within 60 days name the same position of the test fixture.',
  },
  same_lot_elsewhere: {
    name: 'Same lot fails elsewhere',
    look: 'Taken from the data: the reel or housing lot is named in reports of another line or plant.',
  },
  outer_row: {
    name: 'Outer row of the housing',
    look: 'Taken from the report: all cavities named lie in an outer row or column.',
  },
  after_test: {
    name: 'First seen after the electrical test',
    look: 'Taken from the report: found at a stage after the end-of-line electrical test.',
  },
  same_box_mixed_tools: {
    name: 'Same box or reel, different tools',
    look: 'Do the bad leads come from one box, rack or reel although different presses made them?',
  },
  force_below_minimum: {
    name: 'Retention force below its minimum',
    look: 'Pull a comparable terminal of the same lot and tool out with a force gauge, de-energised, and compare with the minimum.',
  },
  load_above_rating: {
    name: 'Load above the retention rating',
    look: 'Measure the pull on the wire in the worst position of the installation and compare with the rating.',
  },
};
