// The bill of materials of the package, in the form of CycloneDX: what is installed with it, by version and hash.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { lockOf, manifestOf, parsed, RUNTIME } from './locked.mjs';

/**
 * @typedef {object} Component
 * @property {string} name
 * @property {string} version
 * @property {{ alg: string, content: string }[]} [hashes]
 */

/**
 * @typedef {object} Bill
 * @property {string} specVersion
 * @property {string} [serialNumber]
 * @property {{ timestamp?: string, component: Component }} metadata
 * @property {Component[]} components
 * @property {{ ref: string, dependsOn: string[] }[]} dependencies
 */

/**
 * As npm writes it, without what differs each time: a random serial number, the time. npm takes the name of the folder for
 * that of the package, and leaves out a runtime dependency that a development dependency uses as well; so it is given a
 * folder of the right name and a lock file without development dependencies.
 *
 * @param {string} work folder to work in
 * @param {Buffer} tarball of the package
 * @returns {string}
 */
export function materials(work, tarball) {
  const folder = `${work}/isochore`;
  mkdirSync(folder);
  const manifest = { ...manifestOf(''), devDependencies: undefined };
  const { packages, ...about } = lockOf('');
  const own = { ...packages[''], devDependencies: undefined };
  writeFileSync(`${folder}/package.json`, JSON.stringify(manifest));
  writeFileSync(
    `${folder}/package-lock.json`,
    JSON.stringify({ ...about, packages: { '': own, ...Object.fromEntries(RUNTIME) } }),
  );
  const written = execFileSync('npm', ['sbom', '--sbom-format=cyclonedx', '--package-lock-only'], {
    cwd: folder,
    encoding: 'utf8',
  });
  const bill = /** @type {Bill} */ (parsed(written));
  delete bill.serialNumber;
  delete bill.metadata.timestamp;
  bill.metadata.component.hashes = [{ alg: 'SHA-512', content: sha512(tarball) }];
  bill.components.sort((a, b) => order(a.name, b.name) || order(a.version, b.version));
  bill.dependencies.sort((a, b) => order(a.ref, b.ref));
  for (const { dependsOn } of bill.dependencies) dependsOn.sort(order);
  return `${JSON.stringify(bill, undefined, 2)}\n`;
}

/**
 * Holds a bill against the schema of its version, and against the lock file.
 *
 * @param {string} text
 * @param {Buffer} tarball
 * @returns {string[]}
 */
export function materialsProblems(text, tarball) {
  const bill = /** @type {Bill} */ (parsed(text));
  const problems = [];
  // The schemas name formats, such as that of an address, which are not checked.
  const ajv = new Ajv({ strict: false, validateFormats: false, allErrors: true });
  for (const other of ['spdx', 'jsf-0.82'])
    ajv.addSchema(schema(other), `http://cyclonedx.org/schema/${other}.SNAPSHOT.schema.json`);
  const validate = ajv.compile(schema(`bom-${bill.specVersion}`));
  if (!validate(bill)) problems.push(...(validate.errors ?? []).map((error) => `bill: ${ajv.errorsText([error])}`));

  const listed = bill.components.map(({ name, version, hashes }) => `${name} ${version} ${hashes?.[0]?.content ?? ''}`);
  const locked = RUNTIME.map(([path, { version, integrity = '' }]) => {
    const hash = Buffer.from(integrity.replace('sha512-', ''), 'base64').toString('hex');
    return `${path.replace(/^.*node_modules\//, '')} ${version} ${hash}`;
  });
  if (listed.join('\n') !== locked.sort(order).join('\n'))
    problems.push(`bill: lists ${listed.join(', ') || 'nothing'}`);
  const { name, hashes } = bill.metadata.component;
  if (name !== 'isochore' || hashes?.[0]?.content !== sha512(tarball))
    problems.push(`bill: is not that of this tarball, but of ${name}`);
  return problems;
}

const SCHEMAS = new URL('./res/schema/', import.meta.resolve('@cyclonedx/cyclonedx-library/package.json'));

/** @param {string} name */
function schema(name) {
  return /** @type {import('ajv').AnySchemaObject} */ (
    parsed(readFileSync(new URL(`${name}.SNAPSHOT.schema.json`, SCHEMAS), 'utf8'))
  );
}

/** By code units, whatever the language of the machine. @param {string} a @param {string} b */
function order(a, b) {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** @param {Buffer} bytes */
function sha512(bytes) {
  return createHash('sha512').update(bytes).digest('hex');
}
