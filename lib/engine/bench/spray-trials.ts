import { readNumber } from '@/shared/forms/sent-fields';
import { readVolume } from '@/shared/measure/size';
import { type Reading, read, unreadable } from '@/shared/outcome';
import { add, exact, multiply, toNumber, ZERO } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { type Retention, sprayPerPlantByLeaves, sprayPerPlantTried } from './spray-per-plant';

/** One trial as it is typed: how many plants, what went into the sprayer, what was left in it. */
export type TrialTyped = { plants: string; putIn: string; left: string };

/** What one plant takes, as worked out from what was typed, in words. */
export type PerPlant = {
  /** mL, to a hundredth. */
  mlPerPlant: number;
  /** The lowest and the highest trial, where there are several. */
  spread: { least: number; most: number } | null;
  rests: string;
};

/**
 * The spray that one plant takes, from one or several trials.
 *
 *   mL per plant = all that is gone ÷ all plants sprayed, so that a trial of more plants counts for more
 *
 * Takes    the trials as typed; those in which nothing stands are left out
 * Gives    mL per plant, and the lowest and highest of the trials
 * Rounds   to hundredths of a mL, once
 * Refuses  what cannot be read, and what `sprayPerPlantTried` refuses, naming the trial
 */
export function sprayByTrials(typed: readonly TrialTyped[]): Reading<PerPlant> {
  const each: number[] = [];
  let [gone, plants] = [ZERO, 0];
  for (const [place, trial] of typed.entries()) {
    if ([trial.plants, trial.putIn, trial.left].every((text) => text.trim() === '')) continue;
    const reading = readTrial(trial);
    if (!reading.ok) return unreadable(`Trial ${place + 1}: ${reading.message}`);
    each.push(reading.value.mlPerPlant);
    plants += reading.value.plants;
    gone = add(gone, multiply(exact(reading.value.mlPerPlant), exact(reading.value.plants)));
  }
  if (each.length === 0) return unreadable('Spray a few plants, and write how many, what went in and what was left.');
  const mlPerPlant = hundredths(toNumber(gone) / plants);
  const spread = each.length > 1 ? { least: hundredths(Math.min(...each)), most: hundredths(Math.max(...each)) } : null;
  const trials = each.length === 1 ? 'one trial' : `${each.length} trials`;
  return read({ mlPerPlant, spread, rests: `${trials} on ${plants} plants` });
}

function readTrial({ plants, putIn, left }: TrialTyped): Reading<{ plants: number; mlPerPlant: number }> {
  const count = readNumber(plants, 'Write how many plants, such as 12.');
  if (!count.ok) return count;
  if (count.value === null || !Number.isInteger(count.value)) return unreadable('Write how many plants were sprayed.');
  const volumes = [readVolume(putIn), left.trim() === '' ? read(ZERO) : readVolume(left)] as const;
  if (!volumes[0].ok) return volumes[0];
  if (!volumes[1].ok) return volumes[1];
  const perPlant = sprayPerPlantTried(volumes[0].value, volumes[1].value, count.value);
  return perPlant.ok ? read({ plants: count.value, mlPerPlant: perPlant.value }) : perPlant;
}

/** What is known of a plant's leaves, as it is typed. */
export type LeavesTyped = { areaCm2: string; sides: '1' | '2'; mlPer100Cm2: string; source: string };

/** 1 mL on 100 cm² is 100 mL on a square metre. */
const PER_SQUARE_METRE = 100;

/**
 * The spray that one plant takes, by its leaves and what stays on them until it runs off.
 *
 * Refuses  an area or a retention that is missing, nothing or no number; a retention that nobody vouches for
 */
export function sprayByLeaves({ areaCm2, sides, mlPer100Cm2, source }: LeavesTyped): Reading<PerPlant> {
  const area = readNumber(areaCm2, 'Write cm², such as 450.');
  if (!area.ok) return area;
  const retention = readNumber(mlPer100Cm2, 'Write mL, such as 1.2.');
  if (!retention.ok) return retention;
  if (!area.value) return unreadable('Write the area of one side of all leaves of a plant, in cm².');
  if (!retention.value) return unreadable('Write how many mL stay on 100 cm² of leaf until it runs off.');
  if (source.trim() === '')
    return unreadable('Write where the retention is from: your own weighing, or who published it.');
  const known: Retention = { mlPerSquareMetre: retention.value * PER_SQUARE_METRE, source: source.trim() };
  const { mlPerPlant, rests } = sprayPerPlantByLeaves(area.value, sides === '1' ? 1 : 2, known);
  return read({ mlPerPlant: hundredths(mlPerPlant), spread: null, rests });
}

const hundredths = (ml: number): number => wholeNearest<number>(multiply(exact(ml), exact(100n))) / 100;
