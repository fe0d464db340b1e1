CREATE TABLE `waiting` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`from_day` text NOT NULL,
	`until_day` text,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	`voided_at` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `waiting_student` ON `waiting` (`student_id`,`from_day`);