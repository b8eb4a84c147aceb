import type { InstallationStore } from '@slack/bolt'
import type { Desk } from './desk.ts'

/** What is used of the envelope round an `app_uninstalled` or `tokens_revoked` event. */
export interface LeavingEvent {
  readonly team_id?: string
  readonly enterprise_id?: string | null
  readonly authorizations?: readonly { readonly is_enterprise_install?: boolean }[] | null
}

/** Forgets the token of a workspace that has taken the app away. */
export async function forgetTeam(
  { parts }: Desk,
  installations: InstallationStore,
  { team_id: team, enterprise_id: enterprise, authorizations }: LeavingEvent,
): Promise<void> {
  const isOrganisation = authorizations?.[0]?.is_enterprise_install ?? false
  await installations.deleteInstallation?.(
    isOrganisation
      ? { isEnterpriseInstall: true, enterpriseId: enterprise ?? '', teamId: undefined }
      : { isEnterpriseInstall: false, enterpriseId: enterprise ?? undefined, teamId: team ?? '' },
  )
  parts.log.info({ team }, 'a Slack workspace has taken the app away; its token is forgotten')
}
