import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { Prisma } from '@/lib/data/connection'
import { migrate } from '@/lib/data/migrate'
import { databaseUrl } from '@/lib/data/place'
import { type Table, tablesOf } from '@/lib/data/tables'
import { freshDatabase } from '../support/fresh-database'
import { ask } from '../support/postgres'

freshDatabase()
const FIRST = '_start'
let folder = ''
let embedded: Database.Database
let tables: Table[]

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'plenum-schema-'))
  migrate({ file: join(folder, 'plenum.db') })
  embedded = new Database(join(folder, 'plenum.db'))
  tables = tablesOf(embedded)
})
afterAll(() => {
  embedded.close()
  rmSync(folder, { recursive: true, force: true })
})

const onServer = <T extends object>(question: string) => ask<T>(databaseUrl(), question)

function migrationsOf(kind: string): string[] {
  const entries = readdirSync(`prisma/${kind}/migrations`, { withFileTypes: true })
  return entries.flatMap((entry) => (entry.isDirectory() ? [entry.name] : [])).sort()
}

test('every migration since PostgreSQL came has one of the same name on either side', () => {
  const [start = '', ...later] = migrationsOf('postgresql')
  expect(start.endsWith(FIRST)).toBe(true)
  expect(migrationsOf('sqlite').filter((name) => name > start)).toEqual(later)
})

test('both kinds of database have the same tables, columns, kinds of columns and keys', async () => {
  const KINDS: Record<string, string> = {
    text: 'text',
    boolean: 'boolean',
    'double precision': 'number',
    integer: 'number',
  }
  const columns = await onServer<{ table: string; name: string; type: string; optional: boolean }>(
    `SELECT table_name AS table, column_name AS name, data_type AS type, is_nullable = 'YES' AS optional
     FROM information_schema.columns WHERE table_schema = current_schema() AND table_name NOT LIKE '\\_%'`,
  )
  const there = columns.map((column) => [column.table, column.name, KINDS[column.type] ?? 'moment', column.optional])
  const here = tables.flatMap(({ name, columns: own, key }) => {
    const found = embedded.pragma(`table_info("${name}")`) as { name: string; notnull: number }[]
    const optional = new Map(found.map((column) => [column.name, column.notnull === 0]))
    return own.map((column) => [
      name,
      column.name,
      column.kind,
      !key.includes(column.name) && optional.get(column.name),
    ])
  })
  expect(sorted(there)).toEqual(sorted(here))
  expect(here.length).toBeGreaterThan(200)
})

test('both have the same keys', async () => {
  const keys = await onServer<{ table: string; columns: string }>(
    `SELECT t.relname AS table, string_agg(a.attname, ',' ORDER BY k.position) AS columns
     FROM pg_index i JOIN pg_class t ON t.oid = i.indrelid JOIN pg_namespace n ON n.oid = t.relnamespace,
       unnest(i.indkey) WITH ORDINALITY k(attnum, position), pg_attribute a
     WHERE i.indisprimary AND a.attrelid = t.oid AND a.attnum = k.attnum AND n.nspname = current_schema()
       AND t.relname NOT LIKE '\\_%' GROUP BY t.relname`,
  )
  expect(sorted(keys.map(({ table, columns }) => [table, columns]))).toEqual(
    sorted(tables.map(({ name, key }) => [name, key.join(',')])),
  )
})

test('both have exactly the columns that the models state', () => {
  const scalars = Prisma as unknown as Record<string, Record<string, string>>
  const stated = Object.keys(Prisma.ModelName).map((model) => [
    model,
    Object.keys(scalars[`${model}ScalarFieldEnum`] ?? {}).sort(),
  ])
  expect(sorted(tables.map(({ name, columns }) => [name, columns.map((column) => column.name).sort()]))).toEqual(
    sorted(stated),
  )
})

test('both have the same indexes and the same parents', async () => {
  const indexes = await onServer<{ table: string; unique: boolean; columns: string }>(
    `SELECT t.relname AS table, i.indisunique AS unique, string_agg(a.attname, ',' ORDER BY k.position) AS columns
     FROM pg_index i JOIN pg_class t ON t.oid = i.indrelid JOIN pg_namespace n ON n.oid = t.relnamespace,
       unnest(i.indkey) WITH ORDINALITY k(attnum, position), pg_attribute a
     WHERE NOT i.indisprimary AND a.attrelid = t.oid AND a.attnum = k.attnum AND n.nspname = current_schema() AND t.relname NOT LIKE '\\_%'
     GROUP BY t.relname, i.indexrelid, i.indisunique`,
  )
  const here = tables.flatMap(({ name }) =>
    (embedded.pragma(`index_list("${name}")`) as { name: string; unique: number; origin: string }[])
      .filter(({ origin }) => origin !== 'pk')
      .map((index) => [
        name,
        index.unique === 1,
        (embedded.pragma(`index_info("${index.name}")`) as { name: string }[]).map((column) => column.name).join(','),
      ]),
  )
  expect(sorted(indexes.map((index) => [index.table, index.unique, index.columns]))).toEqual(sorted(here))
  const parents = await onServer<{ child: string; parent: string; gone: string }>(
    `SELECT c.relname AS child, p.relname AS parent, f.confdeltype AS gone FROM pg_constraint f
     JOIN pg_class c ON c.oid = f.conrelid JOIN pg_class p ON p.oid = f.confrelid WHERE f.contype = 'f'`,
  )
  const own = tables.flatMap(({ name }) =>
    (embedded.pragma(`foreign_key_list("${name}")`) as { table: string; on_delete: string }[]).map((key) => [
      name,
      key.table,
      key.on_delete === 'CASCADE' ? 'c' : key.on_delete,
    ]),
  )
  expect(sorted(parents.map(({ child, parent, gone }) => [child, parent, gone]))).toEqual(sorted(own))
})

test('every text is sorted and compared by its code, as an embedded database does, whatever the server is set to', async () => {
  const others = await onServer(
    `SELECT table_name, column_name FROM information_schema.columns
     WHERE table_schema = current_schema() AND data_type = 'text' AND table_name NOT LIKE '\\_%' AND collation_name IS DISTINCT FROM 'C'`,
  )
  expect(others, 'write TEXT COLLATE "C" in the migration').toEqual([])
  const words = ['Zebra', 'apple', 'Éa', 'éa', 'Apple', 'a-b', 'ab', 'a b', '2026-01-01', '10', '9', '🔥', 'ｚ']
  const list = words.map((word) => `('${word}')`).join(', ')
  const server = await onServer<{ w: string }>(`SELECT w FROM (VALUES ${list}) t(w) ORDER BY w`)
  const byCode = embedded.prepare(`SELECT column1 AS w FROM (VALUES ${list}) ORDER BY w`).pluck().all()
  expect(
    server.map(({ w }) => w),
    'this server would sort otherwise, or the test shows nothing',
  ).not.toEqual(byCode)
  const collated = await onServer<{ w: string }>(`SELECT w FROM (VALUES ${list}) t(w) ORDER BY w COLLATE "C"`)
  expect(collated.map(({ w }) => w)).toEqual(byCode)
})

test('no migration for PostgreSQL does what cannot be undone with the rest of its transaction', () => {
  for (const name of migrationsOf('postgresql')) {
    const text = readFileSync(`prisma/postgresql/migrations/${name}/migration.sql`, 'utf8')
    expect(text, name).not.toMatch(/CONCURRENTLY|\bVACUUM\b|\bCOMMIT\b|CREATE DATABASE/i)
  }
})

function sorted<T>(rows: T[]): T[] {
  return rows.toSorted((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1))
}
