CREATE TABLE `account` (
	`id` text PRIMARY KEY NOT NULL,
	`account_id` text NOT NULL,
	`provider_id` text NOT NULL,
	`user_id` text NOT NULL,
	`access_token` text,
	`refresh_token` text,
	`id_token` text,
	`access_token_expires_at` integer,
	`refresh_token_expires_at` integer,
	`scope` text,
	`password` text,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL,
	FOREIGN KEY (`user_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `account_user` ON `account` (`user_id`);--> statement-breakpoint
CREATE TABLE `assistance` (
	`assistant_id` text NOT NULL,
	`coach_id` text NOT NULL,
	PRIMARY KEY(`assistant_id`, `coach_id`),
	FOREIGN KEY (`assistant_id`) REFERENCES `person`(`user_id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`coach_id`) REFERENCES `person`(`user_id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `auth_session` (
	`id` text PRIMARY KEY NOT NULL,
	`token` text NOT NULL,
	`user_id` text NOT NULL,
	`expires_at` integer NOT NULL,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL,
	`ip_address` text,
	`user_agent` text,
	FOREIGN KEY (`user_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `auth_session_token_unique` ON `auth_session` (`token`);--> statement-breakpoint
CREATE INDEX `auth_session_user` ON `auth_session` (`user_id`);--> statement-breakpoint
CREATE TABLE `charge` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`coach_id` text NOT NULL,
	`kind` text NOT NULL,
	`from_day` text NOT NULL,
	`until_day` text,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	`ended_at` text,
	`ended_by` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`coach_id`) REFERENCES `person`(`user_id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `charge_student` ON `charge` (`student_id`);--> statement-breakpoint
CREATE INDEX `charge_coach` ON `charge` (`coach_id`);--> statement-breakpoint
CREATE TABLE `erasure` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`erased_at` text NOT NULL,
	`who` text NOT NULL,
	`reason` text NOT NULL,
	`sessions` integer NOT NULL,
	`readings` integer NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `family_link` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`token_hash` text NOT NULL,
	`label` text NOT NULL,
	`who` text NOT NULL,
	`made_at` text NOT NULL,
	`expires_at` text NOT NULL,
	`revoked_at` text,
	`revoked_by` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `family_link_hash` ON `family_link` (`token_hash`);--> statement-breakpoint
CREATE INDEX `family_link_student` ON `family_link` (`student_id`,`made_at`);--> statement-breakpoint
CREATE TABLE `family_opening` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`link_id` text NOT NULL,
	`opened_at` text NOT NULL,
	FOREIGN KEY (`link_id`) REFERENCES `family_link`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `family_opening_link` ON `family_opening` (`link_id`,`id`);--> statement-breakpoint
CREATE TABLE `family_request` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`link_id` text,
	`kind` text NOT NULL,
	`asked_at` text NOT NULL,
	`settled_at` text,
	`settled_by` text,
	`answer` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`link_id`) REFERENCES `family_link`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE INDEX `family_request_student` ON `family_request` (`student_id`,`asked_at`);--> statement-breakpoint
CREATE TABLE `invitation` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`kind` text NOT NULL,
	`token_hash` text NOT NULL,
	`name` text NOT NULL,
	`email` text NOT NULL,
	`roles` text DEFAULT '' NOT NULL,
	`assists` text DEFAULT '' NOT NULL,
	`user_id` text,
	`who` text NOT NULL,
	`made_at` text NOT NULL,
	`expires_at` text NOT NULL,
	`used_at` text,
	`revoked_at` text,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`user_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `invitation_hash` ON `invitation` (`token_hash`);--> statement-breakpoint
CREATE TABLE `person` (
	`user_id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`added_at` text NOT NULL,
	`added_by` text NOT NULL,
	`ended_at` text,
	`ended_by` text,
	FOREIGN KEY (`user_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `person_role` (
	`user_id` text NOT NULL,
	`role` text NOT NULL,
	PRIMARY KEY(`user_id`, `role`),
	FOREIGN KEY (`user_id`) REFERENCES `person`(`user_id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `record_view` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`student_id` text NOT NULL,
	`who` text NOT NULL,
	`role` text NOT NULL,
	`what` text NOT NULL,
	`place` text NOT NULL,
	`viewed_at` text NOT NULL,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `record_view_student` ON `record_view` (`student_id`,`id`);--> statement-breakpoint
CREATE TABLE `retention_notice` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`kind` text NOT NULL,
	`student_id` text,
	`link_id` text,
	`announced_at` text NOT NULL,
	`due_day` text NOT NULL,
	`held_at` text,
	`held_by` text,
	`why` text,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`link_id`) REFERENCES `family_link`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `retention_notice_due` ON `retention_notice` (`academy_id`,`due_day`);--> statement-breakpoint
CREATE TABLE `sign_in_try` (
	`key` text PRIMARY KEY NOT NULL,
	`wrong` integer NOT NULL,
	`first_at` integer NOT NULL,
	`last_at` integer NOT NULL,
	`wait_until` integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE `two_factor` (
	`id` text PRIMARY KEY NOT NULL,
	`secret` text NOT NULL,
	`backup_codes` text NOT NULL,
	`user_id` text NOT NULL,
	`verified` integer DEFAULT true,
	`failed_verification_count` integer DEFAULT 0,
	`locked_until` integer,
	FOREIGN KEY (`user_id`) REFERENCES `user`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `two_factor_user` ON `two_factor` (`user_id`);--> statement-breakpoint
CREATE TABLE `user` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`email` text NOT NULL,
	`email_verified` integer DEFAULT false NOT NULL,
	`image` text,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL,
	`two_factor_enabled` integer DEFAULT false
);
--> statement-breakpoint
CREATE UNIQUE INDEX `user_email_unique` ON `user` (`email`);--> statement-breakpoint
CREATE TABLE `verification` (
	`id` text PRIMARY KEY NOT NULL,
	`identifier` text NOT NULL,
	`value` text NOT NULL,
	`expires_at` integer NOT NULL,
	`created_at` integer NOT NULL,
	`updated_at` integer NOT NULL
);
--> statement-breakpoint
CREATE INDEX `verification_identifier` ON `verification` (`identifier`);--> statement-breakpoint
DROP INDEX `student_alias`;--> statement-breakpoint
ALTER TABLE `student` ADD `departed_on` text;--> statement-breakpoint
CREATE INDEX `student_alias` ON `student` (`academy_id`,`alias`);--> statement-breakpoint
ALTER TABLE `academy` ADD `keep_months` integer DEFAULT 24 NOT NULL;--> statement-breakpoint
ALTER TABLE `academy` ADD `link_days` integer DEFAULT 180 NOT NULL;--> statement-breakpoint
ALTER TABLE `academy` ADD `own_consent_age` integer DEFAULT 16 NOT NULL;--> statement-breakpoint
ALTER TABLE `consent` ADD `giver_is` text DEFAULT 'guardian' NOT NULL;--> statement-breakpoint
ALTER TABLE `consent` ADD `withdrawn_by` text;--> statement-breakpoint
ALTER TABLE `import_batch` ADD `user_id` text;--> statement-breakpoint
ALTER TABLE `access_token` ADD `user_id` text;--> statement-breakpoint
ALTER TABLE `draft` ADD `user_id` text;--> statement-breakpoint
ALTER TABLE `practice` ADD `pain` text;--> statement-breakpoint
CREATE TRIGGER `record_view_stands` BEFORE UPDATE ON `record_view` BEGIN SELECT RAISE(ABORT, 'who looked at a record is never changed'); END;
