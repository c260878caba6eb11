import type { JobReading } from '../../src/files/job-reading.ts';
import { readJob } from '../../src/files/read-job.ts';

/** Small schedules of one panel, two inserts and one connection, as a person types them. */
export const sampleSchedules: Readonly<Record<string, string>> = {
  'panels.csv': [
    'mark,strength_MPa,thickness_mm,length_mm,height_mm,drawn_face,face_down',
    'P1,40,180,4000,3000,outside,inside',
  ].join('\n'),
  'inserts.csv': [
    'panel,insert,role,type,face,x_mm,y_mm,connection,hole_mm',
    'P1,1,fixing,F16,outside,900,500,C1,18',
    'P1,2,fixing,F16,outside,1100,500,C1,18',
  ].join('\n'),
  'connections.csv': [
    'connection,panel,face,x_mm,y_mm,plate_width_mm,plate_height_mm,plate_thickness_mm,bolt_class',
    'C1,P1,outside,1000,500,300,100,15,8.8',
  ].join('\n'),
  'loads.csv': ['connection,combination,N_kN,Vx_kN,Vy_kN,Mx_kNm', 'C1,wind,10,2,-5,'].join('\n'),
  'catalogue.csv': [
    'type,name,thread,length_mm,embedment_mm,foot_diameter_mm,foot_thickness_mm,full_head,body_diameter_mm,thread_depth_mm,ultimate_MPa,yield_MPa,finish,thread_class,bolt_finishes',
    'F16,Ferrule M16,M16,103,96,46,7,yes,24,40,510,355,galvanised,6AZ,zinc; galvanised',
  ].join('\n'),
};

/** Reads the sample with some files changed (an empty text: the file is not there). */
export function readSchedulesWith(changes: Readonly<Record<string, string>> = {}): JobReading {
  const files = Object.entries({ ...sampleSchedules, ...changes }).filter(([, content]) => content !== '');
  return readJob(new Map(files));
}

/** Reads the sample with one piece of one file replaced. */
export function readWith(file: string, from: string, to: string): JobReading {
  const content = sampleSchedules[file]!;
  if (content.split(from).length !== 2)
    throw new Error(`${from} stands ${content.split(from).length - 1} times in ${file}`);
  return readSchedulesWith({ [file]: content.replace(from, to) });
}

/** The messages of a reading, or none. */
export function messagesOf(reading: JobReading): string[] {
  return reading.ok ? [] : reading.faults.map((fault) => fault.message);
}
