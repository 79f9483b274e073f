import { count, day, id, listOf, maybe, money, reference, section, words } from './fields';

/*
 * What a shop file says of an order that was placed.
 */

const OrderLine = section({
  offer: reference('offer').describe('Id of the offer.'),
  count: count(1, 1_000_000, 'Write a whole number of packs, 1 or more.').describe('How many packs.'),
  price: maybe(money()).describe('What one pack was to cost.'),
});

export const Order = section({
  id: id().describe('Unique among the orders.'),
  supplier: reference('supplier').describe('Id of the supplier.'),
  placedOn: day().describe('The day on which it was ordered.'),
  expectedOn: maybe(day()).describe('The day on which it is expected. Null: as their delivery time has it.'),
  lines: listOf(OrderLine).describe('What was ordered.'),
  freight: maybe(money()).describe('Freight that it was to cost.'),
  note: maybe(words(500, 'Write a note.')).describe('A note of the shop.'),
  closedOn: maybe(day()).describe('From this day on nothing more of it is expected. Null: the rest still is.'),
});
