import type { CellOut } from '@/shared/csv/write-rows';
import type { CsvList } from './column';

/** A header and two lines of each list, to write over: they come into the demo shop as they are. */
export const TEMPLATES: Record<CsvList, CellOut[][]> = {
  products: [
    [
      'name',
      'kind',
      'form',
      'density g per mL',
      'contents',
      'rates',
      'REI hours',
      'modes',
      'never above °C',
      'first aid',
      'storage',
      'unopened days',
      'opened days',
    ],
    [
      'Rosemary oil 10 %',
      'insecticide',
      'liquid',
      0.93,
      'rosemary oil 10 % w/w',
      'ornamentals, foliar: 1 tsp/gal to 1 tbsp/gal',
      4,
      'IRAC UN',
      32,
      'If in eyes: rinse with water for 15 minutes, then call for advice.',
      'locked, between 5 and 30 °C',
      730,
      365,
    ],
    [
      'Magnesium sulfate',
      'nutrient',
      'powder',
      null,
      'MgO 16 % w/w; S 13 % w/w',
      'ornamentals, foliar: 1 g/L to 5 g/L',
      0,
      null,
      null,
      null,
      'dry',
      1825,
      1095,
    ],
  ],
  offers: [
    ['supplier', 'product', 'pack', 'price', 'breaks', 'lead days', 'since'],
    ['Hollow Supply', 'Neem extract 1.2 %', '1 pt', '102.00', '4: 96.50; 12: 91.00', 5, '2026-01-12'],
    ['North Yard Sundries', 'Citric acid powder', '2.5 lb', '17.40', null, 3, '2026-02-02'],
  ],
  lots: [
    ['product', 'pack', 'count', 'remaining', 'paid', 'received on', 'opened on', 'expires on', 'kept in'],
    ['Seaweed extract', '1 qt', 1, '600 mL', '19.75', '2026-01-20', '2026-02-03', '2028-01-31', 'cabinet, top shelf'],
    ['Copper soap', '1 pt', 3, null, '68.25', '2026-02-17', null, '2028-06-30', 'cabinet, lower shelf'],
  ],
};
