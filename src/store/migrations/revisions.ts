import type { Kysely } from 'kysely'

const DOCUMENT = ['platform', 'workspace', 'kind', 'id'] as const

/** The table of revisions, found by document, by depth (for undo and redo) and by author (to forget one). */
export async function createRevisions(database: Kysely<unknown>): Promise<void> {
  await database.schema
    .createTable('revisions')
    .addColumn('platform', 'text', (column) => column.notNull())
    .addColumn('workspace', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('author', 'text', (column) => column.notNull())
    .addColumn('command', 'text', (column) => column.notNull())
    .addColumn('way', 'text', (column) => column.notNull())
    .addColumn('depth', 'integer', (column) => column.notNull())
    .addColumn('top', 'integer', (column) => column.notNull())
    .addColumn('body', 'text')
    .addPrimaryKeyConstraint('revisions_by_number', [...DOCUMENT, 'number'])
    .execute()
  await database.schema
    .createIndex('revisions_by_depth')
    .on('revisions')
    .columns([...DOCUMENT, 'way', 'depth', 'number'])
    .execute()
  await database.schema
    .createIndex('revisions_by_author')
    .on('revisions')
    .columns(['author', 'platform'])
    .execute()
}
