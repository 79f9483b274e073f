import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import { readClockTime } from '@/shared/time/clock-time';
import type { Rows } from './database';
import { newRows, parsed, type Saving } from './saving';
import { real, realOrNull, small } from './whole';

type FileBench = ShopFile['benches'][number];
type FileProgram = ShopFile['programs'][number];

/** Save benches with what stands on them. */
export async function saveBenches(rows: Rows, shopId: string, benches: Saving<FileBench>[]): Promise<void> {
  await rows.bench.createMany({ data: newRows(shopId, benches, benchRow) });
  for (const { item, isNew } of benches) {
    if (isNew) continue;
    await rows.plantGroup.deleteMany({ where: { shopId, benchId: item.id } });
    await rows.bench.update({ where: { shopId_id: { shopId, id: item.id } }, data: benchRow(item) });
  }
  await rows.plantGroup.createMany({
    data: benches.flatMap(({ item }) =>
      item.plants.map(({ name, pot, count, mlPerPlant }, position) => {
        const amounts = { count: small(count), mlPerPlant: realOrNull(mlPerPlant) };
        return { shopId, benchId: item.id, position, name, pot, ...amounts };
      }),
    ),
  });
}

const benchRow = ({ name, customers, enclosed, coverage, area, place, harvestOn }: FileBench) => ({
  ...{ name, area, place, harvestOn, customers, enclosed },
  coverage: real(coverage),
});

/** Save programs with their recipes in turn and their benches. */
export async function savePrograms(rows: Rows, shopId: string, programs: Saving<FileProgram>[]): Promise<void> {
  await rows.program.createMany({ data: newRows(shopId, programs, programRow) });
  for (const { item, isNew } of programs) {
    if (isNew) continue;
    const where = { shopId, programId: item.id };
    await rows.programRecipe.deleteMany({ where });
    await rows.programBench.deleteMany({ where });
    await rows.program.update({ where: { shopId_id: { shopId, id: item.id } }, data: programRow(item) });
  }
  const items = programs.map(({ item }) => item);
  await rows.programRecipe.createMany({
    data: items.flatMap(({ id: programId, recipes }) =>
      recipes.map((recipeId, position) => ({ shopId, programId, position, recipeId })),
    ),
  });
  await rows.programBench.createMany({
    data: items.flatMap(({ id: programId, benches }) =>
      benches.map((benchId, position) => ({ shopId, programId, position, benchId })),
    ),
  });
}

const programRow = ({ startsOn, endsOn, repeat, startTime, minutes, sprayer }: FileProgram) => ({
  startsOn,
  endsOn,
  repeat,
  sprayer,
  startMinute: small(parsed(readClockTime(startTime))),
  minutes: small(minutes),
});
