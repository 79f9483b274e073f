import { z } from 'zod';
import { shopFileSchema } from '../shop-file/json-schema';
import { ImportAnswer, KeepoutAnswer, MixAnswer, PlanAnswer, PreviewAnswer, Problem, WorkingAnswer } from './answers';
import { ImportBody, ImportPreviewBody } from './import-bodies';
import { KeepoutQuestion, MixQuestion, PlanQuestion, ShopQuestion, WorkingQuestion } from './questions';
import { RecipeCheckBody } from './recipe-check-body';

/** The HTTP API described for programs (OpenAPI 3.1), made from the very contracts that its routes read and answer by. */
export const openApi = () => ({
  openapi: '3.1.0',
  info: {
    title: 'Bench & Bottle',
    version: '1',
    description:
      'One shop’s plan, closed benches and shop file. Every request must name this machine in its Host header; every POST must carry this server’s own Origin. A refusal is a sentence, with the places where there are several.',
    license: { name: 'MIT', identifier: 'MIT' },
  },
  servers: [{ url: '/api/v1' }],
  paths: {
    '/plan': { get: asked('plan', 'Sprayings, costs, stock and flags ahead', PlanQuestion, 'Plan') },
    '/mix': { get: asked('mix', 'The mix sheet of a recipe: order, amounts, strength, pH, cost', MixQuestion, 'Mix') },
    '/keepout': { get: asked('keepout', 'Which benches are closed, and until when', KeepoutQuestion, 'Keepout') },
    '/working': { get: asked('working', 'How a figure of the pages was reached', WorkingQuestion, 'Working') },
    '/shop': { get: asked('exportShop', 'The whole shop as a shop file', ShopQuestion, 'ShopFile') },
    '/schema': { get: asked('schema', 'The JSON Schema of a shop file', z.strictObject({}), 'AnyObject') },
    '/openapi.json': { get: asked('openApi', 'This description', z.strictObject({}), 'AnyObject') },
    '/shop/preview': { post: sent('previewImport', 'What importing a file would change', 'PreviewBody', 'Preview') },
    '/shop/import': { post: sent('importShop', 'Import a file, all of it or nothing', 'ImportBody', 'Imported') },
    '/recipe-check': {
      post: sent('checkRecipe', 'What a recipe comes to while it is typed', 'RecipeBody', 'AnyObject'),
    },
  },
  components: { schemas: schemas() },
});

const schemas = () => ({
  Plan: answerSchema(PlanAnswer),
  Mix: answerSchema(MixAnswer),
  Keepout: answerSchema(KeepoutAnswer),
  Working: answerSchema(WorkingAnswer),
  ShopFile: shopFileSchema(),
  Preview: answerSchema(PreviewAnswer),
  Imported: answerSchema(ImportAnswer),
  Problem: answerSchema(Problem),
  PreviewBody: bodySchema(ImportPreviewBody),
  ImportBody: bodySchema(ImportBody),
  RecipeBody: bodySchema(RecipeCheckBody),
  AnyObject: { type: 'object' },
});

function asked(operationId: string, summary: string, question: z.ZodObject, answer: string) {
  const { properties = {}, required = [] } = z.toJSONSchema(question, { io: 'input', unrepresentable: 'any' });
  const parameters = Object.entries(properties).map(([name, schema]) => ({
    name,
    in: 'query',
    required: required.includes(name),
    schema,
  }));
  return { operationId, summary, parameters, responses: responses(answer) };
}

function sent(operationId: string, summary: string, body: string, answer: string) {
  const requestBody = { required: true, content: jsonOf(body) };
  return { operationId, summary, requestBody, responses: responses(answer) };
}

function responses(answer: string) {
  return {
    200: { description: 'Answered.', content: jsonOf(answer) },
    '4XX': { description: 'Refused: the request, or by the shop. Nothing was changed.', content: jsonOf('Problem') },
    500: { description: 'A fault of the program. The sentence names the line in its log.', content: jsonOf('Problem') },
  };
}

const jsonOf = (name: string) => ({ 'application/json': { schema: { $ref: `#/components/schemas/${name}` } } });

const answerSchema = (contract: z.ZodType) => z.toJSONSchema(contract);
const bodySchema = (contract: z.ZodType) => z.toJSONSchema(contract, { io: 'input' });
