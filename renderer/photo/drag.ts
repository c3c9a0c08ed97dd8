/** Marks a drag that carries photos of the job, so that it is not taken for files from outside. */
export const PHOTO_DRAG = 'application/x-everybolt-photos';
