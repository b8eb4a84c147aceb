import type { Installation, InstallationQuery, InstallationStore } from '@slack/bolt'
import type { Seal } from './seal.ts'

/** Where sealed values are kept. */
export interface Vault {
  /** Undefined when there is none. */
  readonly read: (id: string) => Promise<string | undefined>
  readonly write: (id: string, value: string) => Promise<void>
  readonly forget: (id: string) => Promise<void>
}

/** How the message begins where nobody can say whether the app is installed; it is all that Slack's library hands on. */
export const UNREADABLE = 'the tokens cannot be looked up just now'

/** Keeps the token of every workspace that installed the app, sealed. An organisation's counts for its workspaces. */
export const createInstallations = (vault: Vault, seal: Seal): InstallationStore => {
  const read = (id: string) =>
    vault.read(nameOf(id)).catch((cause: Error) => {
      throw new Error(`${UNREADABLE}: ${cause.message}`, { cause })
    })
  const find = async (id: string | undefined): Promise<Installation | undefined> => {
    const sealed = id === undefined ? undefined : await read(id)
    return sealed === undefined
      ? undefined
      : (JSON.parse(seal.open(nameOf(id ?? ''), sealed)) as Installation)
  }
  return {
    storeInstallation: async (installation) => {
      const id = installation.isEnterpriseInstall ? installation.enterprise?.id : installation.team?.id
      if (id === undefined) throw new Error('Slack named neither a workspace nor an organisation')
      await vault.write(nameOf(id), seal.close(nameOf(id), JSON.stringify(installation)))
    },
    fetchInstallation: async (query) => {
      const own = query.isEnterpriseInstall ? undefined : await find(query.teamId)
      const found = (own ?? (await find(query.enterpriseId))) as
        | Installation<'v1' | 'v2', boolean>
        | undefined
      if (!found) throw new Error('the app is not installed there')
      return found
    },
    deleteInstallation: async (query) => {
      const id = idOf(query)
      if (id !== undefined) await vault.forget(nameOf(id))
    },
  }
}

const idOf = ({
  isEnterpriseInstall,
  enterpriseId,
  teamId,
}: InstallationQuery<boolean>): string | undefined => (isEnterpriseInstall ? enterpriseId : teamId)

const nameOf = (id: string): string => `slack installation ${id}`
