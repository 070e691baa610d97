// What only reading and checking the shape of cards costs elsewhere: js-yaml reads each file of a folder, ajv validates
// it by the editors' schema. Nothing of food safety is checked.
//   node shapes.mjs FOLDER SCHEMA   (js-yaml and ajv from npm beside it or in NODE_PATH's place)
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const require = createRequire(join(process.cwd(), "here.js"));
const yaml = require("js-yaml");
const Ajv = require("ajv");

const [folder, schema] = process.argv.slice(2);
const validate = new Ajv({ strict: false }).compile(JSON.parse(readFileSync(schema, "utf8")));
let fits = 0;
const paths = readdirSync(folder, { withFileTypes: true, recursive: true })
  .filter((entry) => entry.isFile() && /\.ya?ml$/.test(entry.name))
  .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
  .sort();
for (const path of paths)
  for (const card of yaml.loadAll(readFileSync(path, "utf8"))) fits += validate(card) ? 1 : 0;
console.log(`${paths.length} files, ${fits} cards fit`);
